import { describe, expect, it } from 'vitest';
import { circlePath, rectanglePath, sheetPath, textWidth } from '../../../src/views/report/drawing';
import { metreFrame } from '../../../src/views/report/metreFrame';
import { MM, PAGE, pictureFor, sheetFor } from '../../../src/views/report/paper';
import { pageRules } from '../../../src/views/report/pageRules';
import { rulerDrawing } from '../../../src/views/report/rulerDrawing';
import { abreast, blocksOf, columnShares, type Table } from '../../../src/views/report/table';
import { GUIDELINES } from '../../../src/engine/judging/guidelines';
import { toScreen } from '../../../src/editor/camera';

const box = { width: 130 * MM, height: 236 * MM };
const plan = (w: number, h: number) => ({ x0: -1, y0: 2, x1: -1 + w, y1: 2 + h });

describe('a sheet', () => {
  it.each([
    [3, 4, 25],
    [4, 4, 40],
    [8, 6, 75],
    [11, 9, 100],
    [14, 9, 125],
    [20, 15, 200],
    [60, 40, 500],
    [5000, 4000, 20_000],
  ])('of %f × %f m is drawn at 1 : %i', (w, h, scale) => {
    const sheet = sheetFor(plan(w, h), box, 8);
    expect(sheet.scale).toBe(scale);
    expect(sheet.camera.width).toBeLessThanOrEqual(box.width + 1e-9);
    expect(sheet.camera.height).toBeLessThanOrEqual(box.height + 1e-9);
  });

  it('is true: a metre at 1 : 100 is a centimetre on paper', () => {
    const { camera } = sheetFor(plan(11, 9), box, 8);
    const [a] = toScreen(camera, [0, 5]);
    const [b] = toScreen(camera, [1, 5]);
    expect(b - a).toBeCloseTo(10 * MM, 9);
  });

  it('has its lower left corner inside the frame, y up', () => {
    const bounds = plan(8, 6);
    const { camera } = sheetFor(bounds, box, 8);
    const [x, y] = toScreen(camera, [bounds.x0, bounds.y0]);
    expect([x, y]).toEqual([expect.closeTo(8, 9), expect.closeTo(camera.height - 8, 9)]);
  });

  it('that is not to be measured fills its box, and is never larger than 1 : 50', () => {
    expect(pictureFor(plan(10, 5), box).camera.width).toBeCloseTo(box.width, 9);
    expect(pictureFor(plan(2, 2), box).camera.scale).toBeCloseTo(20 * MM, 9);
  });
});

describe('the metre frame', () => {
  it('has a numeral at every filled metre, below and at the left, and 0 m where the plan begins', () => {
    const { camera } = sheetFor({ x0: -0.5, y0: -0.5, x1: 6.5, y1: 4.5 }, box, 8);
    const numerals = metreFrame(camera).flatMap((mark) => (mark.is === 'text' ? [mark.text] : []));
    expect(numerals).toEqual(['0 m', '2', '4', '6', '0 m', '2', '4']);
  });
});

describe('a table', () => {
  const wide = (cells: number, word = '100.00'): Table => ({
    heads: Array.from({ length: cells }, () => ({ text: word, right: true as const })),
    rows: [Array.from({ length: cells }, () => word)],
  });
  const total = (shares: number[]) => shares.reduce((sum, share) => sum + share, 0);

  it('that is wider than the page once made the whole print smaller: its columns now share the page exactly', () => {
    for (const table of [
      wide(3),
      wide(40),
      { heads: [{ text: 'x'.repeat(3000) }, { text: 'm', right: true as const }], rows: [['a', '1.00']] },
    ])
      expect(total(columnShares(table, PAGE.width))).toBeCloseTo(1, 9);
  });

  it('breaks words before it squeezes numbers', () => {
    const table: Table = {
      heads: [{ text: 'name' }, { text: 'note' }, { text: 'µT', right: true }],
      rows: [['very long words '.repeat(40), 'and more '.repeat(90), '0.123']],
    };
    const [, , number] = columnShares(table, 300);
    expect(number! * 300).toBeGreaterThan(textWidth('0.123', { size: 12.6 }));
  });

  it.each([1, 3, 7, 58, 300])('of %i rows keeps them in order, each once, in blocks alike', (n) => {
    const rows = Array.from({ length: n }, (_, i) => [String(i + 1)]);
    const blocks = blocksOf({ heads: [{ text: 'no.' }], rows }, 3);
    expect(blocks.flatMap((block) => block.flatMap((part) => part.rows))).toEqual(rows);
    const heights = blocks.map((block) => block[0]!.rows.length);
    expect(Math.max(...heights)).toBeLessThanOrEqual(14);
    expect(Math.max(...heights) - Math.min(...heights)).toBeLessThanOrEqual(2);
  });

  it('stands as often abreast as its columns allow', () => {
    expect([wide(3), wide(5), wide(9), wide(30)].map((table) => abreast(table, PAGE.width))).toEqual([
      3, 2, 1, 1,
    ]);
  });
});

describe('the ruler', () => {
  const request = {
    height: 500,
    unit: 'uT' as const,
    mains: 50 as const,
    guideline: GUIDELINES.find(({ id }) => id === 'sbm-2015')!,
    target: 0.1,
    readings: [0.05, 0.2],
    pieces: [
      { letter: 'A', value: 0.2 },
      { letter: 'B', value: 0.201 },
    ],
  };
  const textsOf = (asked: typeof request) =>
    rulerDrawing(asked).marks.flatMap((mark) => (mark.is === 'text' ? [mark] : []));

  it('carries the guideline’s words, its name, the target, the unit, and legal values above the break', () => {
    const words = textsOf(request).map(({ text }) => text);
    for (const word of [
      'no anomaly',
      'slight',
      'severe',
      'extreme',
      'SBM-2015',
      'target 0.1',
      'µT',
      '0.03',
      '200',
    ])
      expect(words).toContain(word);
  });

  it('pushes discs apart that would touch', () => {
    const [a, b] = textsOf(request).filter(({ text }) => text === 'A' || text === 'B');
    expect(Math.abs(a!.y - b!.y)).toBeGreaterThanOrEqual(16.9);
  });

  it('grows by a decade where a reading needs it, and leaves out a target it does not hold', () => {
    const words = textsOf({ ...request, readings: [0.002], target: 0.0005 }).map(({ text }) => text);
    expect(words).toContain('0.005');
    expect(words.some((text) => text.startsWith('target'))).toBe(false);
    expect(textsOf(request).map(({ text }) => text)).not.toContain('0.005');
  });
});

describe('page rules', () => {
  it('carry the home’s own words safely', () => {
    const css = pageRules('A "quoted" \\ home\n</style>', [{ page: 'front', title: 'made here' }]);
    expect(css).toContain('\\"quoted\\" \\\\ home');
    expect(css).not.toContain('</style>');
    expect(css).toContain('counter(page) " of " counter(pages)');
    expect(css).toContain('margin: 16mm 15mm 14mm 20mm');
  });
});

describe('paths and widths', () => {
  it('write places to a hundredth of a pixel', () => {
    expect(
      sheetPath(
        [
          [0, 0],
          [1 / 3, 2],
        ],
        true,
      ),
    ).toBe('M0 0L0.33 2Z');
    expect(sheetPath([], true)).toBe('');
    expect(rectanglePath(1, 2, 3, 4)).toBe('M1 2L4 2L4 6L1 6Z');
    expect(circlePath(5, 5, 2)).toContain('a2 2 0 1 0 4 0');
  });

  it('capitals and letter-spacing take room', () => {
    expect(textWidth('HALL', { size: 10 })).toBeGreaterThan(textWidth('hall', { size: 10 }));
    expect(textWidth('hall', { size: 10, spaced: 0.1 })).toBeCloseTo(textWidth('hall', { size: 10 }) + 4, 9);
  });
});
