import type { Home, Id, Reading, Source } from '../../home/home';
import { inOrder } from '../../home/order';
import { pieceLetters } from '../../words/canvas';
import { reportWords } from '../../words/report';
import { hatchLines } from '../canvas/drawing/hatchLines';
import { contourInk, PRINT_INK as INK } from '../canvas/ink';
import { rectanglePath, sheetPath, type Drawing, type Mark } from './drawing';
import { NUMBER } from './leaders';
import { CHAIN, discMarks, lozengeMarks, northMarks, readingMarks, tickedLineMarks } from './signs';

/** A sign as it stands on the plan, and what it means. */
export interface KeySign {
  sign: Drawing;
  text: string;
}

/** What a key explains. */
export interface KeyRequest {
  home: Home;
  level: Id;
  round: Id;
  readings: readonly Reading[];
  /** 'target 0.1 µT', or null where no map is drawn. */
  target: string | null;
  /** Whether some readings stand with their number. */
  numbered: boolean;
  /** 'contour, µT', or null where none is drawn. */
  contour: string | null;
  hatched: boolean;
  /** Those that can be seen on the sheet. */
  sources: readonly Source[];
}

const HEIGHT = 20;
const MIDDLE = HEIGHT / 2;

const sign = (width: number, text: string, marks: Mark[], clips: Record<string, string> = {}): KeySign => ({
  sign: { width, height: HEIGHT, clips, marks },
  text,
});

/** The signs that stand on one level's map, each once. */
export function keyOfSigns(asked: KeyRequest): KeySign[] {
  const { home, level, readings, target, sources } = asked;
  const words = reportWords.signs;
  const letters = pieceLetters(home);
  const used = readings.filter(({ excluded }) => excluded === '');
  const off = home.rounds[asked.round]?.kind === 'supplyOff';
  const dot = (limit: Reading['limit'], excluded: string) =>
    readingMarks({ limit, excluded }, off, [8, MIDDLE]);
  const signs: (KeySign | false)[] = [
    used.some(({ limit }) => limit !== 'below') &&
      sign(16, off ? words.supplyOff : words.reading, dot(null, '')),
    used.some(({ limit }) => limit === 'below') && sign(16, words.below, dot('below', '')),
    used.length < readings.length && sign(16, words.leftOut, dot(null, words.leftOut)),
    sources.some(({ kind }) => kind === 'point') && sign(16, words.point, lozengeMarks([8, MIDDLE])),
    sources.some(({ kind }) => kind === 'line') &&
      sign(
        50,
        words.line,
        tickedLineMarks([
          [1, MIDDLE],
          [49, MIDDLE],
        ]),
      ),
    asked.numbered && sign(26, words.numbered, numberedMarks()),
    asked.contour !== null && contourSign(asked.contour),
    target !== null && targetSign(target),
    asked.hatched && unsupportedSign(words.unsupported),
    inOrder(home.pieces).some((piece) => piece.level === level && letters[piece.id]) &&
      sign(18, words.piece, discMarks([9, MIDDLE], 'A')),
    home.north !== 0 && sign(22, words.north, northMarks([11, MIDDLE], home.north)),
  ];
  return signs.filter((one) => one !== false);
}

/** A dot with its number on a leader. */
function numberedMarks(): Mark[] {
  const leader = sheetPath(
    [
      [8, MIDDLE],
      [15, MIDDLE - 3],
    ],
    false,
  );
  return [
    ...readingMarks({ limit: null, excluded: '' }, false, [5.5, MIDDLE + 1]),
    { is: 'line', d: leader, stroke: INK.wall, width: 0.6 },
    { is: 'text', text: '12', x: 20, y: MIDDLE, hand: NUMBER },
  ];
}

function contourSign(text: string): KeySign {
  const d = sheetPath(
    [
      [0, MIDDLE],
      [34, MIDDLE],
    ],
    false,
  );
  return sign(34, text, [{ is: 'line', d, stroke: contourInk(INK, 0.1), width: 0.7 }]);
}

function targetSign(text: string): KeySign {
  const d = sheetPath(
    [
      [0, MIDDLE],
      [46, MIDDLE],
    ],
    false,
  );
  return sign(46, text, [{ is: 'line', d, stroke: INK.text, width: 1.2, dash: CHAIN }]);
}

function unsupportedSign(text: string): KeySign {
  const box = { x0: 0.5, y0: 3.5, x1: 29.5, y1: 16.5 };
  const edge = rectanglePath(box.x0, box.y0, box.x1 - box.x0, box.y1 - box.y0);
  const hatch = hatchLines(box, [0, 0], 5).map((stroke) => sheetPath(stroke, false));
  const marks: Mark[] = [
    { is: 'line', d: hatch.join(''), stroke: INK.hatch, width: 0.7, clip: 'hatched' },
    { is: 'line', d: edge, stroke: INK.hatch, width: 0.7 },
  ];
  return sign(30, text, marks, { hatched: edge });
}
