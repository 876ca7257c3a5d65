import type { Home } from '../home/home';
import type { View } from './editor';
import type { Toolbox } from './tools/toolbox';

/**
 * Puts the room tool into the hand while a sketch has no room and nothing else was picked up, so that a drag on the bare
 * sheet draws the first one; and takes it out again when that is done.
 */
export function createFirstRoom(toolbox: Toolbox) {
  let hand: 'free' | 'offered' | 'theirs' = 'free';
  return {
    follow(home: Home, view: View) {
      const wanted = view.stage === 'sketch' && Object.keys(home.rooms).length === 0;
      if (wanted && hand === 'free' && toolbox.name === 'select') {
        hand = 'offered';
        toolbox.takeUp('room', { room: { by: 'drag' } });
      } else if (!wanted) {
        if (hand === 'offered' && toolbox.name === 'room') toolbox.takeUp('select');
        hand = 'free';
      }
    },
    /** The person has picked something up. */
    decline() {
      hand = 'theirs';
    },
    /** Another home is on the desk. */
    restart() {
      hand = 'free';
    },
  };
}
