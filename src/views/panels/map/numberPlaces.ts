/** A number to stand beside a point, rather to the left and above it or to the right and below; pixels, y down. */
interface Wish {
  x: number;
  y: number;
  text: string;
  rather: 'left' | 'right';
}

/** Where a number stands: its foot, and whether it reads away from the point to the right or ends at it. */
export interface NumberPlace extends Omit<Wish, 'rather'> {
  anchor: 'start' | 'end';
}

const DIGIT = 7;
const HEIGHT = 10;
const LEFT = [
  { dx: -9, dy: -4, anchor: 'end' },
  { dx: -9, dy: 12, anchor: 'end' },
] as const;
const RIGHT = [
  { dx: 9, dy: 12, anchor: 'start' },
  { dx: 9, dy: -4, anchor: 'start' },
] as const;

/** Places of numbers so that none lies over another, nor over a numbered point, nor past either side; one that finds none is dropped. */
export function numberPlaces(wishes: readonly Wish[], left: number, right: number): NumberPlace[] {
  const taken = wishes.map(({ x, y }) => ({ x0: x - 5, x1: x + 5, y0: y - 5, y1: y + 5 }));
  return wishes.flatMap(({ x, y, text, rather }) => {
    for (const { dx, dy, anchor } of rather === 'left' ? [...LEFT, ...RIGHT] : [...RIGHT, ...LEFT]) {
      const width = DIGIT * text.length;
      const x0 = anchor === 'start' ? x + dx : x + dx - width;
      const box = { x0, x1: x0 + width, y0: y + dy - HEIGHT, y1: y + dy };
      if (box.x0 < left || box.x1 > right || taken.some((other) => overlap(box, other))) continue;
      taken.push(box);
      return [{ x: x + dx, y: y + dy, text, anchor }];
    }
    return [];
  });
}

interface Box {
  x0: number;
  x1: number;
  y0: number;
  y1: number;
}

const overlap = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
