/** A box on the sheet, pixels, y down. */
export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** The places a label may take, best first. */
export interface LabelWish {
  id: string;
  places: readonly Box[];
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const inside = (box: Box, bounds: Box): boolean =>
  box.x >= bounds.x &&
  box.y >= bounds.y &&
  box.x + box.width <= bounds.x + bounds.width &&
  box.y + box.height <= bounds.y + bounds.height;

const CELL = 64;

/** What already stands on the sheet, sorted into squares so that thousands of boxes stay quick to ask. */
export class Crowd {
  readonly #squares = new Map<number, Box[]>();

  add(box: Box): void {
    for (const key of squaresOf(box)) {
      const square = this.#squares.get(key);
      if (square) square.push(box);
      else this.#squares.set(key, [box]);
    }
  }

  isFree(box: Box): boolean {
    return squaresOf(box).every((key) => !this.#squares.get(key)?.some((other) => overlap(box, other)));
  }
}

/** Numbers of the squares a box touches; a sheet is far less than 2^15 squares wide. */
function squaresOf({ x, y, width, height }: Box): number[] {
  const keys: number[] = [];
  for (let i = Math.floor(x / CELL); i * CELL <= x + width; i++) {
    for (let j = Math.floor(y / CELL); j * CELL <= y + height; j++) keys.push(i * 65536 + j);
  }
  return keys;
}

/**
 * Gives each label its first free place wholly on the sheet, in the order of the wishes, and takes that place; a place
 * that `spoils` only where there is no other. A label without one is left out: nothing is ever printed over something
 * else or cut by the edge.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  crowd: Crowd,
  bounds: Box,
  spoils: (box: Box) => boolean = () => false,
): Map<string, Box> {
  const placed = new Map<string, Box>();
  for (const { id, places } of wishes) {
    const free = places.filter((box) => inside(box, bounds) && crowd.isFree(box));
    const place = free.find((box) => !spoils(box)) ?? free[0];
    if (!place) continue;
    crowd.add(place);
    placed.set(id, place);
  }
  return placed;
}

/** Right, left, above and below a dot: the places of a spot height. */
export function besideDot(x: number, y: number, width: number, height: number, gap = 6): Box[] {
  return [
    { x: x + gap, y: y - height / 2, width, height },
    { x: x - gap - width, y: y - height / 2, width, height },
    { x: x - width / 2, y: y - gap - height, width, height },
    { x: x - width / 2, y: y + gap, width, height },
  ];
}

/** The upright box round a turned label. */
export function turnedBox(x: number, y: number, width: number, height: number, angle: number): Box {
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  const [w, h] = [width * cos + height * sin, width * sin + height * cos];
  return { x: x - w / 2, y: y - h / 2, width: w, height: h };
}

/** Boxes along a path, so that labels can keep off it. */
export function boxesAlong(path: readonly (readonly [number, number])[], size: number): Box[] {
  return path.slice(1).flatMap((b, i) => {
    const a = path[i]!;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const count = Math.min(200, Math.ceil(length / size));
    return Array.from({ length: count + 1 }, (_, k): Box => {
      const t = count === 0 ? 0 : k / count;
      const [x, y] = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      return { x: x - size / 2, y: y - size / 2, width: size, height: size };
    });
  });
}
