import type { UnmarkedSource } from '../../src/engine/mapping/sourceSampling/unmarkedSources';

/** A current of 0.6 to 1.4 A along x = 4, near the floor, that explains the first two places. */
export const suspect = (rest: Partial<UnmarkedSource> = {}): UnmarkedSource => ({
  kind: 'line',
  origin: 'house',
  level: 'l1',
  path: [
    [4.004, 0],
    [3.996, 3],
  ],
  height: 0.0512,
  odds: 0.72,
  amperes: [0.63, 1.42],
  atOneMetre: null,
  explains: [0, 1],
  ...rest,
});

/** An appliance at a place. */
export const appliance = (x: number, y: number): UnmarkedSource =>
  suspect({
    kind: 'point',
    path: [[x, y]],
    height: 0.9,
    amperes: null,
    atOneMetre: [0.031, 0.094],
  });
