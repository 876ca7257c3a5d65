import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { FieldUnit } from '../../home/home';
import { edgeText } from '../../words/canvas';
import { unitName } from '../../words/numbers';
import { reportWords } from '../../words/report';
import { tornName } from '../../words/canvas';
import { contourInk, paper, PRINT_INK as INK, tint } from '../canvas/ink';
import { pushApart } from '../ruler/pushApart';
import { tornValues } from '../ruler/rulerModel';
import {
  grownRange,
  isDecade,
  rulerBands,
  rulerClasses,
  rulerNumerals,
  rulerScale,
  rulerTicks,
  type RulerScale,
} from '../ruler/rulerScale';
import { rectanglePath, sheetPath, textWidth, type Drawing, type Hand, type Mark } from './drawing';
import { CHAIN, discMarks } from './signs';

export interface RulerRequest {
  height: number;
  unit: FieldUnit;
  mains: 50 | 60;
  guideline: Pick<GuidelineSet, 'name' | 'edges'>;
  /** µT */
  target: number;
  /** What was read, µT. */
  readings: readonly number[];
  /** Mean field of each piece, µT. */
  pieces: readonly { letter: string; value: number }[];
}

type Place = readonly [number, number];

// From left to right, as on the page: words, their bracket, numerals, ticks, ink, strokes of readings, discs; pixels.
export const RULER_WIDTH = 172;
const WORDS = 58;
const BRACKET = 66;
const NUMERAL = 98;
const INK_X = 112;
const INK_END = 132;
const DISC = 159;
const TOP = 62;
const BOTTOM = 22;
const DISC_EVERY = 17;
const LINE = 11;
const RANGE: Place = [0.012, 4.2];
const TICKS = { long: 9, short: 6, hair: 3 } as const;

const SMALL: Hand = { size: 9.6, weight: 500, fill: INK.text, anchor: 'end' };

const write = (text: string, x: number, y: number, hand: Partial<Hand> = {}): Mark => ({
  is: 'text',
  text,
  x,
  y: y + 3.3,
  hand: { ...SMALL, ...hand },
});
const stroke = (points: readonly Place[], width: number, colour = INK.text): Mark => ({
  is: 'line',
  d: sheetPath(points, false),
  stroke: colour,
  width,
});

/** The whole field ruler: words of the guideline, target, numerals, ink, a stroke for every reading, pieces. */
export function rulerDrawing(request: RulerRequest): Drawing {
  const { readings, pieces, target, height } = request;
  const scale = rulerScale(grownRange(RANGE, readings), TOP, height - BOTTOM);
  return {
    width: RULER_WIDTH,
    height,
    clips: {},
    marks: [
      write(unitName(request.unit), (INK_X + INK_END) / 2, 6.7, {
        size: 10.5,
        weight: 650,
        anchor: 'middle',
      }),
      ...breakMarks(request),
      ...inkMarks(scale),
      ...edgeMarks(scale, request.unit),
      ...wordMarks(request, scale),
      ...readings.filter(scale.holds).map((value) =>
        stroke(
          [
            [INK_END, scale.y(value)],
            [INK_END + 8, scale.y(value)],
          ],
          0.7,
        ),
      ),
      ...(scale.holds(target) ? targetMarks(request, scale) : []),
      ...pieceMarks(
        pieces.filter(({ value }) => scale.holds(value)),
        scale,
      ),
    ],
  };
}

/** Legal and reference values stand above a torn break, not to scale, so that nobody takes one for a precaution. */
function breakMarks({ unit, mains }: RulerRequest): Mark[] {
  const torn = (y: number): Place[] =>
    [0, 1, 2, 3, 4].map((i): Place => [INK_X + (i * (INK_END - INK_X)) / 4, y + (i % 2) * 4]);
  const [upper, lower] = [torn(46), torn(TOP - 7)];
  const above: Place[] = [[INK_X, 16], [INK_END, 16], ...upper.toReversed()];
  const below: Place[] = [...lower, [INK_END, TOP + 0.5], [INK_X, TOP + 0.5]];
  return [
    { is: 'area', d: sheetPath(above, true), fill: tint(INK, 8) },
    { is: 'area', d: sheetPath(below, true), fill: tint(INK, 8) },
    stroke(upper, 0.7),
    stroke(lower, 0.7),
    ...tornValues(mains).flatMap(({ id, value }, i) => {
      const y = 25 + i * 13;
      const numeral = edgeText(value, unit);
      return [
        write(tornName(id), Math.min(BRACKET, NUMERAL - textWidth(numeral, SMALL) - 5), y),
        write(numeral, NUMERAL, y),
        stroke(
          [
            [NUMERAL + 3, y],
            [INK_X, y],
          ],
          0.9,
        ),
      ];
    }),
  ];
}

function inkMarks(scale: RulerScale): Mark[] {
  const bands = rulerBands(scale);
  const { top, bottom, y } = scale;
  return [
    ...bands.map(({ band, from, to }): Mark => ({
      is: 'area',
      d: rectanglePath(INK_X, y(to), INK_END - INK_X, y(from) - y(to)),
      fill: tint(INK, band),
    })),
    ...bands.slice(1).map(({ from }) =>
      stroke(
        [
          [INK_X, y(from)],
          [INK_END, y(from)],
        ],
        0.7,
        contourInk(INK, from),
      ),
    ),
    stroke(
      [
        [INK_X, top],
        [INK_X, bottom],
        [INK_END, bottom],
        [INK_END, top],
      ],
      0.8,
    ),
  ];
}

function edgeMarks(scale: RulerScale, unit: FieldUnit): Mark[] {
  return [
    ...rulerTicks(scale).map(({ value, size }) =>
      stroke(
        [
          [INK_X - TICKS[size], scale.y(value)],
          [INK_X, scale.y(value)],
        ],
        size === 'hair' ? 0.4 : 0.8,
      ),
    ),
    ...rulerNumerals(scale).map((value) =>
      write(edgeText(value, unit), NUMERAL, scale.y(value), { weight: isDecade(value) ? 700 : 500 }),
    ),
  ];
}

/** Each word of the guideline, centred in a bracket that spans its class; the set's name at the foot. */
function wordMarks({ guideline, height, target, unit }: RulerRequest, scale: RulerScale): Mark[] {
  const flag = targetWidth(target, unit) > WORDS - 30 ? scale.y(target) : -Infinity;
  return [
    write(guideline.name, INK_X - 8, height - 9, { italic: true, fill: INK.text2 }),
    ...rulerClasses(guideline, scale).flatMap(({ word, from, to }): Mark[] => {
      const [top, bottom] = [scale.y(to) + 1.5, scale.y(from) - 1.5];
      const bracket = stroke(
        [
          [BRACKET - 3, top],
          [BRACKET, top],
          [BRACKET, bottom],
          [BRACKET - 3, bottom],
        ],
        0.7,
      );
      const lines = brokenInto(word, WORDS);
      const half = (lines.length * LINE) / 2;
      if (2 * half > bottom - top + 6) return [bracket];
      // A word makes way for the flag of the target where there is room in its class.
      const middle = (top + bottom) / 2;
      const clear =
        Math.abs(middle - flag) >= half + 9 ? middle : middle < flag ? flag - half - 9 : flag + half + 9;
      const first = clear - half + LINE / 2;
      return [bracket, ...lines.map((text, i) => write(text, WORDS, first + i * LINE))];
    }),
  ];
}

function brokenInto(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = `${last} ${word}`;
    if (last !== undefined && textWidth(longer, SMALL) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

const targetText = (target: number, unit: FieldUnit): string =>
  `${reportWords.target} ${edgeText(target, unit)}`;
const targetWidth = (target: number, unit: FieldUnit): number =>
  textWidth(targetText(target, unit), SMALL) + 8;

/** A solid flag that grows out of the plan's frame, and the chain line across the ink. */
function targetMarks({ unit, target }: RulerRequest, scale: RulerScale): Mark[] {
  const y = scale.y(target);
  const width = targetWidth(target, unit);
  const flag: Place[] = [
    [0, y - 7.5],
    [width, y - 7.5],
    [width + 7, y],
    [width, y + 7.5],
    [0, y + 7.5],
  ];
  // The line makes way for a numeral at its height.
  const numbered = rulerNumerals(scale).some((value) => Math.abs(scale.y(value) - y) < 7);
  const parts: Place[][] = numbered
    ? [
        [
          [width + 8, y],
          [NUMERAL - 20, y],
        ],
        [
          [INK_X - 10, y],
          [INK_END + 9, y],
        ],
      ]
    : [
        [
          [width + 8, y],
          [INK_END + 9, y],
        ],
      ];
  const d = parts.map((part) => sheetPath(part, false)).join('');
  return [
    { is: 'line', d, stroke: paper(INK), width: 3 },
    { is: 'line', d, stroke: INK.text, width: 1.2, dash: CHAIN },
    { is: 'area', d: sheetPath(flag, true), fill: INK.wall },
    write(targetText(target, unit), 5, y, { fill: paper(INK), anchor: 'start', weight: 600 }),
  ];
}

/** Discs on stems, pushed apart where they would touch; the stem slants to the true value. */
function pieceMarks(pieces: RulerRequest['pieces'], scale: RulerScale): Mark[] {
  const wanted = pieces.map(({ value }) => scale.y(value));
  const places = pushApart(wanted, DISC_EVERY, scale.top, scale.bottom);
  return pieces.flatMap(({ letter }, i): Mark[] => [
    stroke(
      [
        [INK_END, wanted[i]!],
        [INK_END + 10, wanted[i]!],
        [DISC, places[i]!],
      ],
      1,
    ),
    ...discMarks([DISC, places[i]!], letter),
  ]);
}
