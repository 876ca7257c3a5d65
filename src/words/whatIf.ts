import type { Arrangement, Home } from '../home/home';
import { roomName } from './things';

export const openPlanWords = {
  label: 'Sleep in any room',
  note: 'Living rooms and rooms to work in are tried for beds and cots too.',
};

/** 'The sitting room becomes a room to sleep in.'; empty where no room changes its use. */
export function usesSentence(home: Home, rooms: Arrangement['rooms']): string {
  const names = rooms.map(({ id }) => roomName(home, id));
  if (names.length === 0) return '';
  if (names.length === 1) return `${names[0]!} becomes a room to sleep in.`;
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)!} become rooms to sleep in.`;
}
