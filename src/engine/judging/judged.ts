import type { RoomFigures } from './rooms';

// The middle of a floor is known where half of it is: the project's choice.
const JUDGED_SHARE = 0.5;

/** A room is judged where at least half of its floor has a map that deserves to be shown. */
export const isJudged = ({ supported }: Pick<RoomFigures, 'supported'>): boolean => supported >= JUDGED_SHARE;
