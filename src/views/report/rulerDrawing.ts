import { BAND_EDGES } from '../../engine/contours/thresholds';
import { GUIDELINES, type GuidelineSet } from '../../engine/judging/guidelines';
import type { FieldUnit } from '../../home/home';
import { edgeText } from '../../words/canvas';
import { unitName } from '../../words/numbers';
import { reportWords } from '../../words/report';
import { contourInk, paper, PRINT_INK as INK, tint } from '../canvas/ink';
import { rectanglePath, sheetPath, textWidth, type Drawing, type Hand, type Mark } from './drawing';
import { discMarks } from './signs';

export interface RulerRequest {
  height: number;
  unit: FieldUnit;
  guideline: GuidelineSet;
  /** µT */
  target: number;
  /** What was read, µT. */
  readings: readonly number[];
  /** Mean field of each piece, µT. */
  pieces: readonly { letter: string; value: number }[];
}

/** Width of the whole ruler, pixels. */
export const RULER_WIDTH = 172;

// From left to right, as on the page: words, their bracket, numerals, ticks, ink, strokes of readings, discs.
const WORDS = 58;
const BRACKET = 66;
const NUMERAL = 98;
const INK_X = 112;
const INK_WIDTH = 20;
const DISC = 159;
const TOP = 74;
const BOTTOM = 22;
const DISC_EVERY = 17;
const RANGE: readonly [number, number] = [0.012, 4.2];

const SMALL: Hand = { size: 9.6, weight: 500, fill: INK.text, anchor: 'end' };

/** The whole field ruler: words of the guideline, target, numerals, ink, a stroke for every reading, pieces. */
export function rulerDrawing(request: RulerRequest): Drawing {
  const [low, high] = rangeOf(request.readings);
  const length = request.height - TOP - BOTTOM;
  const y = (value: number) => TOP + (length * Math.log(high / value)) / Math.log(high / low);
  const inRange = (value: number) => value >= low && value <= high;
  return {
    width: RULER_WIDTH,
    height: request.height,
    clips: {},
    marks: [
      {
        is: 'text',
        text: unitName(request.unit),
        x: INK_X + INK_WIDTH / 2,
        y: 10,
        hand: { ...SMALL, size: 10.5, weight: 650, anchor: 'middle' },
      },
      ...breakMarks(request.unit),
      ...inkMarks(low, high, y),
      ...tickMarks(low, high, y, request.unit),
      ...wordMarks(request.guideline, low, high, y, request.height),
      ...request.readings.filter(inRange).map((value): Mark => ({
        is: 'line',
        d: sheetPath(
          [
            [INK_X + INK_WIDTH, y(value)],
            [INK_X + INK_WIDTH + 8, y(value)],
          ],
          false,
        ),
        stroke: INK.text,
        width: 0.7,
      })),
      ...(inRange(request.target) ? targetMarks(y(request.target), request) : []),
      ...pieceMarks(
        request.pieces.filter(({ value }) => inRange(value)),
        y,
      ),
    ],
  };
}

/** Grows by whole decades where readings need it, and never shrinks. */
function rangeOf(readings: readonly number[]): [number, number] {
  let [low, high] = RANGE;
  const positive = readings.filter((value) => value > 0);
  while (positive.some((value) => value < low) && low > 1e-5) low /= 10;
  while (positive.some((value) => value > high)) high *= 10;
  return [low, high];
}

/** Legal and reference values stand above a torn break, not to scale, so that nobody takes one for a precaution. */
function breakMarks(unit: FieldUnit): Mark[] {
  const limits = GUIDELINES.filter((set) => set.kind === 'limit' && set.uses.length === 0)
    .map((set) => ({ name: set.name.replace(/ \(.*/, ''), value: set.edges.at(-1)!.value }))
    .sort((a, b) => b.value - a.value);
  const teeth = (at: number): [number, number][] =>
    Array.from({ length: 5 }, (_, i): [number, number] => [
      INK_X + (i * INK_WIDTH) / 4,
      at + (i % 2 === 0 ? 0 : 4),
    ]);
  const above = [[INK_X, 18], [INK_X + INK_WIDTH, 18], ...teeth(58).reverse()] as [number, number][];
  return [
    { is: 'area', d: sheetPath(above, true), fill: tint(INK, 8) },
    ...limits.flatMap(({ name, value }, i): Mark[] => {
      const at = 27 + i * 12;
      return [
        { is: 'text', text: name, x: BRACKET, y: at + 3.2, hand: { ...SMALL, size: 8.6 } },
        { is: 'text', text: edgeText(value, unit), x: NUMERAL, y: at + 3.2, hand: SMALL },
        {
          is: 'line',
          d: sheetPath(
            [
              [NUMERAL + 3, at],
              [INK_X, at],
            ],
            false,
          ),
          stroke: INK.text,
          width: 0.9,
        },
      ];
    }),
    {
      is: 'area',
      d: sheetPath([...teeth(TOP - 6), [INK_X + INK_WIDTH, TOP + 1], [INK_X, TOP + 1]], true),
      fill: tint(INK, 8),
    },
    { is: 'line', d: sheetPath(teeth(58), false), stroke: INK.text, width: 0.7 },
    { is: 'line', d: sheetPath(teeth(TOP - 6), false), stroke: INK.text, width: 0.7 },
  ];
}

function inkMarks(low: number, high: number, y: (value: number) => number): Mark[] {
  const edges = BAND_EDGES.filter((edge) => edge > low && edge < high);
  const stops = [low, ...edges, high];
  const bands = stops.slice(1).map((to, i): Mark => {
    const band = BAND_EDGES.filter((edge) => edge <= stops[i]! * (1 + 1e-9)).length - 1;
    return {
      is: 'area',
      d: rectanglePath(INK_X, y(to), INK_WIDTH, y(stops[i]!) - y(to)),
      fill: tint(INK, band),
    };
  });
  const lines = edges.map((edge): Mark => ({
    is: 'line',
    d: sheetPath(
      [
        [INK_X, y(edge)],
        [INK_X + INK_WIDTH, y(edge)],
      ],
      false,
    ),
    stroke: contourInk(INK, edge),
    width: 0.7,
  }));
  const foot = y(low);
  const sides = sheetPath(
    [
      [INK_X, y(high)],
      [INK_X, foot],
      [INK_X + INK_WIDTH, foot],
      [INK_X + INK_WIDTH, y(high)],
    ],
    false,
  );
  return [...bands, ...lines, { is: 'line', d: sides, stroke: INK.text, width: 0.8 }];
}

/** Long at 1, 2, 3 and 5, short at whole numbers, hair between 1 and 2; numerals at band edges, decades heavier. */
function tickMarks(low: number, high: number, y: (value: number) => number, unit: FieldUnit): Mark[] {
  const ticks: Mark[] = [];
  for (let decade = Math.floor(Math.log10(low)); decade <= Math.log10(high); decade++) {
    for (let tenths = 10; tenths < 100; tenths += tenths < 20 ? 2 : 10) {
      const value = (tenths / 10) * 10 ** decade;
      if (value < low || value > high) continue;
      const length = [10, 20, 30, 50].includes(tenths) ? 9 : tenths % 10 === 0 ? 6 : 3;
      ticks.push({
        is: 'line',
        d: sheetPath(
          [
            [INK_X - length, y(value)],
            [INK_X, y(value)],
          ],
          false,
        ),
        stroke: INK.text,
        width: length === 3 ? 0.4 : 0.8,
      });
    }
  }
  const numbered = [...BAND_EDGES, 5, 10, 20, 50, 100, 0.01, 0.005, 0.002, 0.001].filter(
    (value) => value > low && value < high,
  );
  const numerals = numbered.map((value): Mark => {
    const isDecade = Number.isInteger(Math.round(Math.log10(value) * 1e6) / 1e6);
    return {
      is: 'text',
      text: edgeText(value, unit),
      x: NUMERAL,
      y: y(value) + 3.3,
      hand: { ...SMALL, weight: isDecade ? 700 : 500 },
    };
  });
  return [...ticks, ...numerals];
}

/** Each word of the guideline, centred in a bracket that spans its class; the set's name at the foot. */
function wordMarks(
  set: GuidelineSet,
  low: number,
  high: number,
  y: (value: number) => number,
  height: number,
): Mark[] {
  const classes = set.edges
    .map(({ value, word }, i) => ({
      word,
      from: Math.max(low, value),
      to: Math.min(high, set.edges[i + 1]?.value ?? high),
    }))
    .filter(({ from, to }) => to > from);
  const foot: Mark = {
    is: 'text',
    text: set.name,
    x: BRACKET,
    y: height - 6,
    hand: { ...SMALL, italic: true, fill: INK.text2 },
  };
  return [
    foot,
    ...classes.flatMap(({ word, from, to }): Mark[] => {
      const [top, bottom] = [y(to) + 1.5, y(from) - 1.5];
      const bracket: Mark = {
        is: 'line',
        d: sheetPath(
          [
            [BRACKET - 3, top],
            [BRACKET, top],
            [BRACKET, bottom],
            [BRACKET - 3, bottom],
          ],
          false,
        ),
        stroke: INK.text,
        width: 0.7,
      };
      const lines = broken(word, WORDS);
      if (lines.length * 11 > bottom - top + 6) return [bracket];
      const first = (top + bottom) / 2 - ((lines.length - 1) * 11) / 2 + 3.3;
      return [
        bracket,
        ...lines.map((text, i): Mark => ({ is: 'text', text, x: WORDS, y: first + i * 11, hand: SMALL })),
      ];
    }),
  ];
}

function broken(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && textWidth(longer, SMALL) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A solid flag that grows out of the plan's frame, and the chain line across the ink. */
function targetMarks(y: number, { unit, target }: RulerRequest): Mark[] {
  const text = `${reportWords.target} ${edgeText(target, unit)}`;
  const width = textWidth(text, SMALL) + 8;
  const chain = sheetPath(
    [
      [width + 8, y],
      [INK_X + INK_WIDTH + 9, y],
    ],
    false,
  );
  return [
    { is: 'line', d: chain, stroke: paper(INK), width: 3 },
    { is: 'line', d: chain, stroke: INK.text, width: 1.2, dash: [8, 2.4, 1.6, 2.4] },
    {
      is: 'area',
      d: sheetPath(
        [
          [0, y - 7.5],
          [width, y - 7.5],
          [width + 7, y],
          [width, y + 7.5],
          [0, y + 7.5],
        ],
        true,
      ),
      fill: INK.wall,
    },
    {
      is: 'text',
      text,
      x: 5,
      y: y + 3.3,
      hand: { ...SMALL, fill: paper(INK), anchor: 'start', weight: 600 },
    },
  ];
}

/** Discs on stems, pushed apart where they would touch; the stem slants to the true value. */
function pieceMarks(pieces: RulerRequest['pieces'], y: (value: number) => number): Mark[] {
  const placed = pieces
    .map(({ letter, value }) => ({ letter, true: y(value), at: y(value) }))
    .sort((a, b) => a.true - b.true);
  for (let pass = 0; pass < placed.length; pass++) {
    for (let i = 1; i < placed.length; i++) {
      const gap = placed[i]!.at - placed[i - 1]!.at;
      if (gap >= DISC_EVERY) continue;
      placed[i - 1]!.at -= (DISC_EVERY - gap) / 2;
      placed[i]!.at += (DISC_EVERY - gap) / 2;
    }
  }
  const end = INK_X + INK_WIDTH;
  return placed.flatMap(({ letter, true: value, at }): Mark[] => [
    {
      is: 'line',
      d: sheetPath(
        [
          [end, value],
          [end + 10, value],
          [DISC, at],
        ],
        false,
      ),
      stroke: INK.text,
      width: 1,
    },
    ...discMarks([DISC, at], letter),
  ]);
}
