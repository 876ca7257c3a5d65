import type { ReadingPlace } from '../engine/arranging/placesToRead';
import type { Home } from '../home/home';
import { roomAt } from '../home/questions/roomAt';
import { roomName } from './things';

export const readFirstWords = {
  title: (name: string) => `Read both places of ${name} first`,
  why: 'On fields that were known, two readings at each place doubled the moves that were right.',
  otherLevel: 'Those on another level are shown there.',
  here: 'Read here',
  all: 'Read these places',
};

/** 'where it stands, Front bedroom' */
export function readPlaceText(home: Home, { when, level, at }: ReadingPlace): string {
  const room = roomAt(home, level, at);
  const where = when === 'now' ? 'where it stands' : 'where it would stand';
  return room ? `${where}, ${roomName(home, room.id)}` : where;
}
