import type { Fixture } from '../../../home/home';
import type { Line } from './line';

const WEIGHT = 0.8;

/** A fixture's outline, with a diagonal where it stands the full height of the room. */
export function fixtureLines({ outline, kind }: Fixture): Line[] {
  const lines: Line[] = [{ points: outline, closed: true, weight: WEIGHT }];
  const isFullHeight = kind === 'wardrobe' || kind === 'chimney';
  if (isFullHeight && outline.length >= 4) lines.push({ points: [outline[0]!, outline[2]!], weight: WEIGHT });
  return lines;
}
