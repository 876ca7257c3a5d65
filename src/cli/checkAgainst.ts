import { GUIDELINES } from '../engine/judging/guidelines';
import { optionWords } from '../words/commandLine';
import type { Home } from '../home/home';
import type { AskedPoint, Options } from './options';

/** Names in the options that the home does not have; one line each, with those it has. */
export function checkAgainst(home: Home, options: Options, points: readonly AskedPoint[]): string[] {
  const problems: string[] = [];
  const look = (option: string, id: string | null, have: readonly string[], what: string) => {
    if (id === null || have.includes(id)) return;
    problems.push(optionWords.notInHome(option, id, what, have));
  };
  const levels = Object.keys(home.levels);
  look('round', options.round, Object.keys(home.rounds), 'round');
  look('level', options.level, levels, 'level');
  look(
    'for',
    options.for,
    [...Object.keys(home.rooms), ...usedPieces(home)],
    'room or piece that somebody uses',
  );
  look('along', options.along, Object.keys(home.walks), 'walk');
  look(
    'guideline',
    options.guideline,
    [...GUIDELINES.map((set) => set.id), ...Object.keys(home.guidelines)],
    'guideline',
  );
  for (const level of new Set(points.map((point) => point.level)))
    look(options.points === null ? 'at' : 'points', level, levels, 'level');
  return problems;
}

/** Pieces that somebody spends hours in: of others there is no dose to make surer. */
const usedPieces = (home: Home): string[] =>
  Object.values(home.pieces)
    .filter(({ uses }) => uses.some(({ hours }) => hours > 0))
    .map(({ id }) => id);
