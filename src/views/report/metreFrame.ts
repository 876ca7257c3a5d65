import type { Camera } from '../../editor/editor';
import { toPlan } from '../../editor/camera';
import { metreText } from '../../words/canvas';
import { frameMarks } from '../canvas/drawing/frameMarks';
import { paper, PRINT_INK as INK } from '../canvas/ink';
import { rectanglePath, type Mark } from './drawing';

/** Width of the metre frame on paper, and the room its numerals take under it and to its left; CSS pixels. */
export const EDGE = 8;
export const NUMERALS = 15;
export const SIDE_NUMERALS = 24;

const FILLED = 4;

/** The metre frame round a sheet, graduated in true metres, with numerals under its lower edge and along its left one. */
export function metreFrame(camera: Camera): Mark[] {
  const { width, height, scale } = camera;
  const [left, top] = toPlan(camera, 0, 0);
  const inset = (EDGE - FILLED) / 2;
  const band = `${rectanglePath(0, 0, width, height)}${rectanglePath(EDGE, EDGE, width - 2 * EDGE, height - 2 * EDGE)}`;
  const within = (from: number, to: number, length: number): [number, number] | null => {
    const [start, end] = [Math.max(EDGE, from), Math.min(length - EDGE, to)];
    return end > start ? [start, end - start] : null;
  };
  const across = frameMarks(width, left, scale).flatMap(({ from, to }) => {
    const mark = within(from, to, width);
    if (!mark) return [];
    const [start, length] = mark;
    return [
      rectanglePath(start, inset, length, FILLED),
      rectanglePath(start, height - EDGE + inset, length, FILLED),
    ];
  });
  const up = frameMarks(height, top, scale, -1).flatMap(({ from, to }) => {
    const mark = within(from, to, height);
    if (!mark) return [];
    const [start, length] = mark;
    return [
      rectanglePath(inset, start, FILLED, length),
      rectanglePath(width - EDGE + inset, start, FILLED, length),
    ];
  });
  const sideNumerals = frameMarks(height, top, scale, -1)
    .map(({ metres }) => ({ metres, y: (top - metres) * scale }))
    .filter(({ y }) => y > EDGE && y < height - EDGE)
    .map(({ metres, y }): Mark => ({
      is: 'text',
      text: metreText(metres),
      x: -4,
      y: y + 3,
      hand: { size: 9, fill: INK.text2, anchor: 'end' },
    }));
  const numerals = frameMarks(width, left, scale)
    .filter(({ from }) => from > EDGE && from < width - EDGE)
    .map(({ from, metres }): Mark => ({
      is: 'text',
      text: metreText(metres),
      x: from,
      y: height + NUMERALS - 4,
      hand: { size: 9, fill: INK.text2, anchor: 'middle' },
    }));
  return [
    { is: 'area', d: band, fill: paper(INK) },
    { is: 'area', d: [...across, ...up].join(''), fill: INK.text },
    { is: 'line', d: rectanglePath(0.4, 0.4, width - 0.8, height - 0.8), stroke: INK.text, width: 0.8 },
    {
      is: 'line',
      d: rectanglePath(EDGE, EDGE, width - 2 * EDGE, height - 2 * EDGE),
      stroke: INK.text,
      width: 0.8,
    },
    ...numerals,
    ...sideNumerals,
  ];
}
