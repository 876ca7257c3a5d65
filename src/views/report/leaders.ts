import type { Box } from '../canvas/drawing/labelPlaces';
import { Crowd, inside } from '../canvas/drawing/labelPlaces';
import { paper, PRINT_INK as INK } from '../canvas/ink';
import { sheetPath, textWidth, type Hand, type Mark } from './drawing';

/** A reading whose value found no place: its number, as in the table, and where its dot is, pixels. */
export interface Numbered {
  number: string;
  at: readonly [number, number];
}

export const NUMBER: Hand = {
  size: 8.4,
  italic: true,
  fill: INK.text,
  anchor: 'middle',
  halo: { colour: paper(INK), width: 1.8, opacity: 0.72 },
};

const [NEAREST, FURTHEST, APART, TURNS] = [9, 90, 3, 24];

/**
 * The number of each reading on a leader from its dot, at the nearest place that nothing else stands on. Where a plan is so
 * full that there is none, the number stands beside its dot all the same: no reading is without one on paper.
 */
export function leaderMarks(readings: readonly Numbered[], taken: readonly Box[], sheet: Box): Mark[] {
  const crowd = new Crowd();
  for (const box of taken) crowd.add(box);
  return readings.flatMap(({ number, at }) => {
    const box = freePlace(at, textWidth(number, NUMBER) + 2, sheet, crowd);
    crowd.add(box);
    const middle = [box.x + box.width / 2, box.y + box.height / 2] as const;
    return [
      ...leader(at, middle, box),
      { is: 'text', text: number, x: middle[0], y: middle[1] + NUMBER.size * 0.34, hand: NUMBER } as const,
    ];
  });
}

function freePlace([x, y]: Numbered['at'], width: number, sheet: Box, crowd: Crowd): Box {
  const height = NUMBER.size * 1.1;
  const around = (reach: number, turn: number): Box => ({
    x: x + Math.cos(turn) * (reach + width / 2) - width / 2,
    y: y + Math.sin(turn) * (reach + height / 2) - height / 2,
    width,
    height,
  });
  for (let reach = NEAREST; reach <= FURTHEST; reach += APART) {
    for (let k = 0; k < TURNS; k++) {
      const box = around(reach, (2 * Math.PI * k) / TURNS);
      if (inside(box, sheet) && crowd.isFree(box)) return box;
    }
  }
  return around(NEAREST / 2, -Math.PI / 4);
}

/** From beside the dot to the edge of the number's box. */
function leader(at: Numbered['at'], middle: readonly [number, number], box: Box): Mark[] {
  const [dx, dy] = [middle[0] - at[0], middle[1] - at[1]];
  const length = Math.hypot(dx, dy);
  const stop =
    1 - Math.min(1, Math.min(box.width / 2 / Math.abs(dx || 1e-9), box.height / 2 / Math.abs(dy || 1e-9)));
  const start = 2.6 / length;
  if (stop <= start) return [];
  const d = sheetPath(
    [start, stop].map((t): readonly [number, number] => [at[0] + t * dx, at[1] + t * dy]),
    false,
  );
  return [
    { is: 'line', d, stroke: paper(INK), width: 1.8, opacity: 0.72 },
    { is: 'line', d, stroke: INK.wall, width: 0.6 },
  ];
}
