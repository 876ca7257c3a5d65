import type { Home, Id, Reading } from '../../home/home';
import { inOrder } from '../../home/order';
import { reportWords } from '../../words/report';
import { hatchLines } from '../canvas/drawing/hatchLines';
import { PRINT_INK as INK } from '../canvas/ink';
import { rectanglePath, sheetPath, type Drawing, type Mark } from './drawing';
import { discMarks, lozengeMarks, readingMarks, tickedLineMarks } from './signs';

/** A sign as it stands on the plan, and what it means. */
export interface KeySign {
  sign: Drawing;
  text: string;
}

const HEIGHT = 20;

const sign = (width: number, text: string, marks: Mark[], clips: Record<string, string> = {}): KeySign => ({
  sign: { width, height: HEIGHT, clips, marks },
  text,
});

/** The signs that stand on one level's map, each once. */
export function keyOfSigns(
  home: Home,
  level: Id,
  readings: readonly Reading[],
  target: string,
  mapped: boolean,
): KeySign[] {
  const sources = inOrder(home.sources).filter((source) => source.level === level);
  const middle = HEIGHT / 2;
  const words = reportWords.signs;
  const dot = (limit: Reading['limit'], excluded: string, off: boolean) =>
    readingMarks({ limit, excluded }, off, [8, middle]);
  const used = readings.filter(({ excluded }) => excluded === '');
  const off = readings.some(({ round }) => round !== null && home.rounds[round]?.kind === 'supplyOff');
  const signs: (KeySign | false)[] = [
    used.some(({ limit }) => limit !== 'below') &&
      sign(16, off ? words.supplyOff : words.reading, dot(null, '', off)),
    used.some(({ limit }) => limit === 'below') && sign(16, words.below, dot('below', '', false)),
    used.length < readings.length && sign(16, words.leftOut, dot(null, 'x', false)),
    sources.some(({ kind }) => kind === 'point') && sign(16, words.point, lozengeMarks([8, middle])),
    sources.some(({ kind }) => kind === 'line') &&
      sign(
        50,
        words.line,
        tickedLineMarks([
          [1, middle],
          [49, middle],
        ]),
      ),
    mapped &&
      sign(46, target, [
        {
          is: 'line',
          d: sheetPath(
            [
              [0, middle],
              [46, middle],
            ],
            false,
          ),
          stroke: INK.text,
          width: 1.2,
          dash: [8, 2.4, 1.6, 2.4],
        },
      ]),
    mapped && unsupportedSign(words.unsupported),
    inOrder(home.pieces).some((piece) => piece.level === level) &&
      sign(18, words.piece, discMarks([9, middle], 'A')),
  ];
  return signs.filter((one) => one !== false);
}

function unsupportedSign(text: string): KeySign {
  const box = { x0: 0.5, y0: 3.5, x1: 29.5, y1: 16.5 };
  const edge = rectanglePath(box.x0, box.y0, box.x1 - box.x0, box.y1 - box.y0);
  const hatch = hatchLines(box, [0, 0], 5).map((stroke) => sheetPath(stroke, false));
  return sign(
    30,
    text,
    [
      { is: 'line', d: hatch.join(''), stroke: INK.hatch, width: 0.7, clip: 'hatched' },
      { is: 'line', d: edge, stroke: INK.hatch, width: 0.7 },
    ],
    { hatched: edge },
  );
}
