import type { LengthUnit } from '../home/home';
import { countOf } from './collections';
import { fixedText, lengthText } from './numbers';

/** The guide of an empty home. */
export const firstSteps = {
  title: 'A new home',
  lead: 'One bedroom takes about ten minutes: a sketch, nine readings, and you see where the bed does best.',
  steps: [
    {
      title: 'Sketch the room',
      text: 'Drag it out on the sheet, then correct its lengths. Or start another way:',
    },
    {
      title: 'Walk and read',
      text: 'Stand still, wait for the meter to settle, touch the place, type the value.',
    },
    { title: 'See the map', text: 'It draws from the third reading and says where it can be believed.' },
  ],
  type: 'Type its width and length',
  trace: 'Trace a photo or a scan',
  readFirst: 'Read first, draw later',
  sample: 'Look round the sample home first',
  open: 'Open a home file',
  caution:
    'Readings and furniture only. Open no panel and touch no wiring. Nothing you enter leaves this device.',
};

export const sketch = {
  title: 'The plan',
  lead: 'Pick up a sign, then press or drag on the plan.',
  keyTitle: 'Key of signs',
  rooms: 'Rooms',
  roomDrag: 'room, dragged out',
  roomCorners: 'room by corners',
  roomTyped: 'room, typed',
  door: 'door',
  window: 'window',
  gap: 'gap',
  openings: 'Doors and windows',
  fixtures: 'Fixed things',
  wardrobe: 'built-in wardrobe',
  radiator: 'radiator',
  chimney: 'chimney breast',
  otherFixture: 'other fixed thing',
  pieces: 'Furniture',
  bedTwo: 'bed for two',
  bedOne: 'bed for one',
  cot: 'cot',
  desk: 'desk',
  seat: 'seat',
  otherPiece: 'other piece',
  sources: 'Sources',
  line: 'line source',
  point: 'point source',
  sourceNote:
    'What you know of: a street line, a cable, a pipe; an appliance, a meter cupboard, a transformer.',
  walks: 'Walks',
  walk: 'walk, a straight line of readings',
  size: 'Size',
  selectTool: 'put the sign down',
  letGo: 'let go',
  moveRight: 'Move right by',
  moveUp: 'Move up the page by',
  nothing: 'Nothing on this level yet.',
  width: 'Width, left to right',
  length: 'Length, up the page',
  use: 'Used for',
  name: 'Name',
  addRoom: 'Draw this room',
  roomName: (n: number) => `Room ${n}`,
  levels: 'Levels and north',
  levelName: 'Name of the level',
  elevation: 'Floor above the street',
  north: 'North, degrees from the top of the sheet',
  deleteWord: 'take away',
  duplicate: 'one more',
  turn: 'turn a quarter',
  walls: 'Lengths of the walls',
  sideLengths: 'Lengths of its sides',
  fixtureWidth: 'Width, along the wall',
  fixtureDepth: 'Depth, into the room',
  fixtureSide: { right: 'right side', left: 'left side', up: 'upper side', down: 'lower side' },
  cornerInWall: (wall: number) => `a corner in the middle of wall ${wall}`,
  cornerGone: (wall: number) => `without the corner where wall ${wall} begins`,
  done: 'done',
  wall: (n: number) => `wall ${n}`,
  kind: 'Kind',
  openingWidth: 'Width',
  offset: 'From the wall’s first corner',
  whichWall: 'In wall',
  hinge: 'Hinge',
  hingeStart: 'first side',
  hingeEnd: 'second side',
  swing: 'Opens',
  swingIn: 'in',
  swingOut: 'out',
  swingNone: 'no leaf',
  inRoom: (room: string) => `in ${room}`,
  addOpening: 'Put into a wall:',
  front: 'Doors along',
  noFront: 'no side',
  across: 'Across',
  along: 'Along',
  acrossPage: 'Across, x',
  upPage: 'Up the page, y',
  angle: 'Turned, degrees',
  heightOf: 'Height above the floor',
  mattress: 'Height of the mattress',
  uses: 'Who uses it',
  who: 'Who',
  side: 'Side',
  sides: { left: 'left', right: 'right', middle: 'middle' },
  sidesAre: 'Left and right of someone lying face up.',
  hours: 'Hours a day',
  addUse: 'somebody else',
  removeUse: 'nobody there',
  locked: 'Stays where it is',
  mayStandIn: 'May stand in',
  anySuitable: 'any room that suits it',
  access: 'Kept free beside it',
  bothSides: 'Somebody sleeps on either side: both are kept free, so that each can get out there.',
  oneSide: 'Somebody sleeps on either side, and only one is kept free to get out: the other strip is 0.',
  noSide: 'Somebody sleeps on either side, and neither is kept free to get out: both strips are 0.',
  keepBoth: (metres: string) => `keep ${metres} free at both`,
  left: 'Left',
  right: 'Right',
  foot: 'Foot',
  sitter: 'Where one sits',
  falloff: 'Falls off with distance',
  falloffs: {
    fit: 'as the readings say',
    '1': 'as 1/r, a net current',
    '2': 'as 1/r², a line',
    '3': 'as 1/r³, an appliance',
  },
  origin: 'Comes from',
  origins: { outside: 'outside', house: 'the house', unknown: 'not known' },
  corner: (n: number, of: number) =>
    of === 1 ? 'Place' : n === 1 ? 'From' : n === of ? 'To' : `Corner ${n}`,
  acrossUp: 'across, up',
  sleeps: (n: number) => (n === 1 ? 'for one' : `for ${n}`),
};

const HOW = {
  roomDrag: 'Drag over its floor on the plan.',
  roomCorners: 'Press each corner; or point the way, type a length, Enter. Press the first corner to close.',
  opening: 'Press a wall.',
  fixture: 'Press by its wall for one of common size, or drag over its width and depth.',
  piece: 'Press where it stands; R turns it.',
  line: 'Press its points; Enter ends it.',
  point: 'Press its place.',
  walk: 'Press its two ends.',
};
const WAY: Record<string, keyof typeof HOW> = {
  roomDrag: 'roomDrag',
  roomCorners: 'roomCorners',
  door: 'opening',
  window: 'opening',
  gap: 'opening',
  wardrobe: 'fixture',
  radiator: 'fixture',
  chimney: 'fixture',
  other: 'fixture',
  line: 'line',
  point: 'point',
  walk: 'walk',
};

/** 'In hand: radiator.' and how it is used; `sign` names it in the key. */
export function handText(sign: string, word: string): { what: string; how: string } {
  const name = word.charAt(0).toLowerCase() + word.slice(1);
  return { what: `In hand: ${name}.`, how: `${HOW[WAY[sign] ?? 'piece']} Escape puts it down.` };
}

/** So many are named one by one; more are counted. */
const NAMED = 6;

/** '3 things:' and 'Bed, Desk, Window.', or '42 things:' and '11 rooms, 16 openings.' */
export function severalThings(things: readonly { name: string; collection: string }[]): {
  count: string;
  names: string;
} {
  const collections = [...new Set(things.map(({ collection }) => collection))];
  const parts =
    things.length <= NAMED
      ? things.map(({ name }) => name)
      : collections.map((one) => countOf(one, things.filter(({ collection }) => collection === one).length));
  return { count: `${things.length} things:`, names: `${parts.join(', ')}.` };
}

export const trace = {
  title: 'Trace a picture',
  choose: 'Choose a photo or a scan',
  another: 'Another picture',
  note: 'Up to 1 MB. It stays on this device, inside the home.',
  opacity: 'How strongly it shows',
  scale: 'Set its scale',
  scaleHow: 'Press two points on the plan whose distance you know.',
  scaleLength: 'Distance between the two points',
  remove: 'take the picture away',
  tooLarge: (megabytes: number) =>
    `The picture is too large: ${fixedText(megabytes, 1)} MB. A picture may have 1 MB: make it smaller or save it as JPEG, then choose it again.`,
  notPicture: (name: string) =>
    `Not a picture this page can show: “${name}”. Choose a PNG, JPEG, WebP or GIF file. The plan stays as it was.`,
};

const LEVEL_NAMES = ['Ground floor', 'First floor', 'Second floor', 'Third floor'];

/** What the next level is called until somebody says otherwise. */
export function nextLevelName(levels: number): string {
  return LEVEL_NAMES[levels] ?? `Level ${levels + 1}`;
}

const SQUARE_FEET = 1 / 0.3048 ** 2;

/** '12.6 m²', '136 ft²': the floor in the unit of the lengths. */
export function areaText(squareMetres: number, unit: LengthUnit): string {
  return unit === 'm'
    ? `${fixedText(squareMetres, 1)} m²`
    : `${fixedText(squareMetres * SQUARE_FEET, 0)} ft²`;
}

/** '1.40 × 2.00 m' */
export function sizeText(size: readonly [number, number], unit: LengthUnit): string {
  return unit === 'm'
    ? `${fixedText(size[0], 2)} × ${lengthText(size[1], 'm')}`
    : `${lengthText(size[0], unit)} × ${lengthText(size[1], unit)}`;
}
