import { isJudged } from '../../engine/judging/judged';
import type { Reading } from '../../home/home';
import { firstOf } from '../../home/order';
import { canvasWords, edgeText, planName, readingLabel } from '../../words/canvas';
import { withUnit } from '../../words/numbers';
import type { Box } from './drawing/labelPlaces';
import { contourLabelInk, paper } from './ink';
import type { ContourWish, NameWish, PlacedContour, ValueWish } from './labels';
import { setHand, widthOf, write, type Hand } from './lettering';
import { isRough, levelOf, type Scene } from './scene';
import { SHOWN } from './shown';
import type { Sheet } from './sheet';

const NAME_SIZES = { wide: 11.5, desk: 10, tablet: 10, phone: 8.6 } as const;
const NAME_ALPHA = 0.72;
const NAME_HALO = 3.5;
const LINE_HEIGHT = 15;

interface Lettered extends NameWish {
  lines: { text: string; hand: Hand }[];
}

function nameHand(scene: Scene, isGrounds: boolean): Hand {
  const size = NAME_SIZES[scene.form];
  return isGrounds ? { size: size + 2, weight: 500, italic: true } : { size, weight: 650, spaced: 0.1 };
}

/** The rooms' names, each with its value or the lack of one where the stage shows values. */
export function nameWishes(sheet: Sheet, scene: Scene): Lettered[] {
  const { context } = sheet;
  const unit = scene.home.settings.fieldUnit;
  const figures = new Map(scene.results.assessment?.rooms.map((room) => [room.id, room]));
  return levelOf(scene.home, scene.view.level).rooms.map((room) => {
    const lines = [{ text: planName(room), hand: nameHand(scene, room.use === 'grounds') }];
    if (SHOWN[scene.view.stage].roomValues && scene.form !== 'phone') {
      const found = figures.get(room.id);
      const plain: Hand = { size: 13, weight: 450 };
      if (found && isJudged(found)) lines.push({ text: withUnit(found.median, unit), hand: plain });
      else if (scene.lettered.picture)
        lines.push({ text: canvasWords.notJudged(found?.supported ?? 0), hand: { ...plain, italic: true } });
    }
    const width = Math.max(...lines.map(({ text, hand }) => widthOf(context, text, hand)));
    return {
      id: room.id,
      outline: room.outline,
      lines,
      width: width + 6,
      height: lines.length * LINE_HEIGHT,
    };
  });
}

export function paintNames(
  sheet: Sheet,
  scene: Scene,
  names: readonly Lettered[],
  placed: Map<string, Box>,
): void {
  const { ink } = sheet;
  const selected = new Set(scene.selection.filter(({ kind }) => kind === 'room').map(({ id }) => id));
  for (const { id, lines } of names) {
    const box = placed.get(id);
    if (!box) continue;
    lines.forEach(({ text, hand }, i) => {
      write(sheet, {
        text,
        hand,
        x: box.x + box.width / 2,
        y: box.y + (i + 0.5) * LINE_HEIGHT,
        fill: i === 0 && selected.has(id) ? ink.accent : ink.text,
        halo: { colour: paper(ink), width: NAME_HALO / 2, alpha: NAME_ALPHA },
      });
    });
  }
}

interface ValueLettered extends ValueWish {
  text: string;
  isLeftOut: boolean;
  hand: Hand;
}

export function valueWishes(sheet: Sheet, scene: Scene, readings: readonly Reading[]): ValueLettered[] {
  const { home, form } = scene;
  const hand: Hand = { size: form === 'phone' ? 13.5 : 11, weight: 500 };
  const first = firstOf(home.meters);
  return readings.map((reading) => {
    const meter = reading.meter ? home.meters[reading.meter] : first;
    const text = readingLabel(reading, home.settings.fieldUnit, meter?.resolution ?? 0);
    const isLeftOut = reading.excluded !== '';
    const width = widthOf(sheet.context, text, hand);
    return { id: reading.id, at: reading.at, text, hand, isLeftOut, width: width + 2, height: hand.size + 2 };
  });
}

export function paintValues(sheet: Sheet, values: readonly ValueLettered[], placed: Map<string, Box>): void {
  const { ink } = sheet;
  for (const { id, text, hand, isLeftOut } of values) {
    const box = placed.get(id);
    if (!box) continue;
    write(sheet, {
      text,
      hand,
      x: box.x + box.width / 2,
      y: box.y + box.height / 2,
      fill: isLeftOut ? ink.text3 : ink.text,
      halo: { colour: paper(ink), width: NAME_HALO / 2, alpha: NAME_ALPHA },
    });
  }
}

const CONTOUR_HAND: Hand = { size: 11, weight: 500 };

/** Labels for contours: the target first, then edges, then the lines between, each along its own line. */
export function contourWishes(sheet: Sheet, scene: Scene): ContourWish[] {
  const { picture, contours, target: targetLines } = scene.lettered;
  if (!picture || isRough(scene.picture) || scene.form === 'phone') return [];
  const { fieldUnit: unit, target } = scene.home.settings;
  setHand(sheet.context, CONTOUR_HAND);
  const wish = (value: number, lines: ContourWish['lines'], isTarget: boolean): ContourWish => {
    const text = edgeText(value, unit);
    return { text, value, lines, isTarget, width: sheet.context.measureText(text).width };
  };
  const edges = contours.filter(({ kind }) => kind !== 'between');
  const between = contours.filter(({ kind }) => kind === 'between');
  return [
    wish(target, targetLines, true),
    ...[...edges, ...between].map(({ value, lines }) => wish(value, lines, false)),
  ];
}

export function paintContourLabels(sheet: Sheet, labels: readonly PlacedContour[]): void {
  const { context } = sheet;
  for (const { x, y, angle, text, value, isTarget } of labels) {
    const { fill, halo } = contourLabelInk(sheet.ink, value);
    context.save();
    context.translate(x, y);
    context.rotate(angle);
    write(sheet, {
      text,
      x: 0,
      y: 0,
      hand: isTarget ? { ...CONTOUR_HAND, weight: 700 } : CONTOUR_HAND,
      fill,
      halo: { colour: halo, width: 2.5 },
    });
    context.restore();
  }
}
