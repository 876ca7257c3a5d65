import { describe, expect, it } from 'vitest';
import type { Mark, ToolLoad, ToolName } from '../../src/editor/editor';
import { addReading } from '../../src/home/edits/add';
import { bedroom, box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

const lengths = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.mark === 'length' ? [mark.text] : []));
const first = <T>(record: Record<string, T>): T => Object.values(record)[0]!;

describe('drawing a room', () => {
  it('is dragged out as a rectangle in whole decimetres, shows its lengths, and is one step', async () => {
    const { editor, drag, lift } = await drive();
    editor.useTool('room', { room: { by: 'drag', use: 'sleeping' } });
    drag(
      [
        [1.02, 1.03],
        [2, 2],
        [5.04, 3.98],
      ],
      { hold: true },
    );
    expect(lengths(editor.overlay)).toEqual(['4.00 m', '3.00 m']);
    expect(editor.home.rooms).toEqual({});
    lift([5.04, 3.98]);
    expect(first(editor.home.rooms)).toMatchObject({
      level: 'l1',
      use: 'sleeping',
      outline: box(1, 1, 5, 4),
    });
    expect(editor.selection).toEqual([{ kind: 'room', id: 'r1' }]);
    editor.undo();
    expect([editor.home.rooms, editor.canUndo]).toEqual([{}, false]);
  });

  it('a second room snaps to the walls of the first', async () => {
    const { editor, drag } = await drive({ home: homeWith(room(box(0.03, 0.07, 4.03, 3.07))) });
    editor.useTool('room', { room: { by: 'drag' } });
    drag([
      [4.06, 0.03],
      [6, 2],
      [7.02, 3.1],
    ]);
    expect(editor.home.rooms.r2!.outline).toEqual(box(4.03, 0.07, 7, 3.07));
  });

  it('a drag too thin to be a room is refused with a reason', async () => {
    const { editor, drag } = await drive();
    editor.useTool('room', { room: { by: 'drag' } });
    drag([
      [1, 1],
      [4, 1.01],
    ]);
    expect(editor.home.rooms).toEqual({});
    expect(editor.notice?.text).toEqual({ kind: 'outline-too-small' });
  });

  it('a second finger gives the rectangle up and moves the paper', async () => {
    const { editor, drag, lift } = await drive();
    editor.useTool('room', { room: { by: 'drag' } });
    drag(
      [
        [1, 1],
        [3, 3],
      ],
      { hold: true, type: 'touch' },
    );
    const { scale } = editor.camera;
    editor.pointer.down({ ...touch, id: 2, x: 500, y: 300 });
    editor.pointer.move({ ...touch, id: 2, x: 700, y: 300 });
    expect(editor.camera.scale).not.toBe(scale);
    editor.pointer.up({ ...touch, id: 2, x: 700, y: 300 });
    lift([3, 3], { type: 'touch' });
    expect(editor.home.rooms).toEqual({});
    expect(editor.overlay.some(({ mark }) => mark === 'ring')).toBe(false);
  });

  it('by corners: right angles hold, the first corner closes it', async () => {
    const { editor, click, hover } = await drive();
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1]);
    click([4.02, 1.05]);
    click([4.04, 3.06]);
    click([2.1, 4.02], { alt: true });
    click([1.03, 4]);
    hover([1.04, 1.03]);
    expect(editor.overlay.some((mark) => mark.mark === 'ring' && mark.state === 'broken')).toBe(false);
    click([1.04, 1.03]);
    expect(first(editor.home.rooms).outline).toEqual([
      [1, 1],
      [4, 1],
      [4, 3.1],
      [2.1, 4.02],
      [1, 4.02],
    ]);
  });

  it('by typed lengths in the direction of the pointer, with a comma or a unit', async () => {
    const { editor, click, hover, type, key } = await drive();
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1]);
    hover([2.5, 1.02]);
    type('3,25');
    expect(lengths(editor.overlay)).toEqual(['3,25|']);
    key('Enter');
    hover([4.27, 3]);
    type('280 cm');
    key('Backspace');
    key('m');
    key('Enter');
    hover([2, 3.8]);
    type('3.25');
    key('Enter');
    key('Enter');
    expect(first(editor.home.rooms).outline).toEqual(box(1, 1, 4.25, 3.8));
  });

  it('a length that is none is said, and what was drawn stays', async () => {
    const { editor, click, hover, type, key } = await drive();
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1]);
    hover([2.5, 1]);
    type('4.2.1');
    key('Enter');
    expect(editor.notice?.text).toEqual({ kind: 'not-a-length', text: '4.2.1' });
    expect(editor.overlay.filter(({ mark }) => mark === 'corner').length).toBe(2);
  });

  it('undo takes back the last corner before it takes back the home', async () => {
    const { editor, click, drag } = await drive();
    editor.useTool('room', { room: { by: 'drag' } });
    drag([
      [5, 1],
      [7, 3],
    ]);
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1]);
    click([3, 1]);
    editor.undo();
    editor.undo();
    expect(Object.keys(editor.home.rooms)).toEqual(['r1']);
    editor.undo();
    expect(editor.home.rooms).toEqual({});
  });

  it('an outline that crosses itself shows broken, is refused, and can be mended', async () => {
    const { editor, click, hover, key } = await drive();
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1]);
    click([4, 1]);
    click([1, 3]);
    click([4, 3]);
    hover([2.5, 4]);
    expect(editor.overlay.some((mark) => mark.mark === 'ring' && mark.state === 'broken')).toBe(true);
    key('Enter');
    expect(editor.notice?.text.kind).toBe('outline-crosses');
    expect(editor.home.rooms).toEqual({});
    editor.undo();
    key('Enter');
    expect(first(editor.home.rooms).outline.length).toBe(3);
  });

  it('fault: Escape in the middle of a press was forgotten, and lifting the finger set the thing all the same', async () => {
    const { editor, drag, lift, key } = await drive({ home: homeWith(room(box(0, 0, 5, 4))) });
    const before = editor.home;
    const path: [number, number][] = [
      [1, 1],
      [2, 2],
    ];
    const hands: [ToolName, ToolLoad][] = [
      ['piece', { piece: { kind: 'seat', name: 'Chair', size: [0.5, 0.5] } }],
      ['room', { room: { by: 'drag' } }],
      ['opening', { opening: { kind: 'door' } }],
      ['source', { source: { kind: 'point', name: '' } }],
    ];
    for (const [tool, load] of hands) {
      editor.useTool(tool, load);
      drag(path, { hold: true });
      key('Escape');
      lift([2, 2]);
      expect(editor.home, tool).toBe(before);
    }
  });

  it('zooming with two fingers keeps the corners that are set', async () => {
    const { editor, click } = await drive();
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1], { type: 'touch' });
    click([3, 1], { type: 'touch' });
    editor.pointer.down({ ...touch, id: 1, x: 300, y: 300 });
    editor.pointer.down({ ...touch, id: 2, x: 500, y: 300 });
    editor.pointer.move({ ...touch, id: 2, x: 600, y: 300 });
    editor.pointer.up({ ...touch, id: 2, x: 600, y: 300 });
    editor.pointer.up({ ...touch, id: 1, x: 300, y: 300 });
    expect(editor.overlay).toContainEqual({
      mark: 'path',
      points: [
        [1, 1],
        [3, 1],
      ],
      closed: false,
    });
  });

  it('Escape clears the typed length first, then the outline, then puts the tool down', async () => {
    const { editor, click, hover, type, key } = await drive();
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1]);
    hover([2, 1]);
    type('3');
    key('Escape');
    expect(lengths(editor.overlay)).toEqual(['1.00 m']);
    key('Escape');
    expect(lengths(editor.overlay)).toEqual([]);
    expect(editor.tool).toBe('room');
    key('Escape');
    expect(editor.tool).toBe('select');
  });
});

const touch = {
  id: 1,
  type: 'touch',
  x: 0,
  y: 0,
  button: 0,
  shift: false,
  alt: false,
  command: false,
  time: 0,
} as const;

describe('the first room', () => {
  const path: [number, number][] = [
    [1, 1],
    [2, 2],
    [5, 4],
  ];

  it('is drawn on the bare sheet without picking anything up; then the hand is free', async () => {
    const { editor, drag } = await drive();
    expect(editor.tool).toBe('room');
    drag(path);
    expect(first(editor.home.rooms).outline).toEqual(box(1, 1, 5, 4));
    expect(editor.tool).toBe('select');
    editor.undo();
    expect(editor.tool).toBe('room');
  });

  it('is not pressed on those who put it down, chose another tool, or are at another stage', async () => {
    const { editor, drag, key } = await drive();
    key('Escape');
    expect(editor.tool).toBe('select');
    drag(path);
    expect(editor.home.rooms).toEqual({});
    editor.useTool('room', { room: { by: 'drag' } });
    drag(path);
    expect(editor.tool).toBe('room');
    const other = await drive();
    other.editor.setStage('survey');
    expect(other.editor.tool).toBe('reading');
    other.editor.setStage('sketch');
    expect(other.editor.tool).toBe('room');
  });
});

describe('openings', () => {
  it('go into the nearest wall at the pointer', async () => {
    const { editor, click } = await drive({ home: homeWith(room(box(0, 0, 5, 4))) });
    editor.useTool('opening', { opening: { kind: 'door', width: 0.8 } });
    click([1.22, 0.1]);
    expect(first(editor.home.openings)).toMatchObject({ room: 'r1', kind: 'door', wall: 0, width: 0.8 });
    expect(first(editor.home.openings).offset).toBeCloseTo(0.8, 6);
    expect(editor.tool).toBe('opening');
  });

  it('into a slanted wall, by the way along it', async () => {
    const home = homeWith(
      room([
        [0, 0],
        [4, 0],
        [0, 3],
      ]),
    );
    const { editor, click } = await drive({ home });
    editor.useTool('opening', { opening: { kind: 'window', width: 1 } });
    click([2.8, 0.95], { alt: true });
    const opening = first(editor.home.openings);
    expect(opening.wall).toBe(1);
    // The foot of (2.8, 0.95) on the wall from (4, 0) to (0, 3) lies 1.53 m along it.
    expect(opening.offset).toBeCloseTo(1.53 - 0.5, 6);
  });

  it('are refused where the wall is too short, and away from any wall', async () => {
    const { editor, click } = await drive({ home: homeWith(room(box(0, 0, 0.7, 4))) });
    editor.useTool('opening', { opening: { kind: 'door', width: 0.8 } });
    click([0.35, 0.05]);
    expect(editor.notice?.text).toEqual({ kind: 'opening-too-wide', width: 0.8, wallLength: 0.7 });
    click([3, 3]);
    expect(editor.notice?.text).toEqual({ kind: 'no-wall-near' });
    expect(editor.home.openings).toEqual({});
  });
});

describe('furniture and fixed things', () => {
  it('a bed goes with its head to the wall nearest by', async () => {
    const { editor, click } = await drive({ home: homeWith(room(box(0, 0, 5, 4))) });
    editor.useTool('piece', { piece: { kind: 'bed', name: 'Double bed', size: [1.4, 2] } });
    click([0.9, 2.2]);
    // Head to the left wall: the head points to −x, which is a quarter turn counter-clockwise from +y.
    expect(first(editor.home.pieces)).toMatchObject({
      name: 'Double bed',
      angle: 90,
      at: [1, 2.2],
      size: [1.4, 2],
    });
    expect(editor.tool).toBe('select');
  });

  it('in a corner it stands flush with the other wall, whichever way round the room was drawn', async () => {
    const { editor, click } = await drive({
      home: homeWith(room(box(0, 0, 5, 4).reverse() as [number, number][])),
    });
    editor.useTool('piece', { piece: { kind: 'bed', name: 'Bed', size: [1.4, 2] } });
    click([4.2, 3.15]);
    expect(first(editor.home.pieces)).toMatchObject({ angle: 270, at: [4, 3.3] });
  });

  it('along a slanted wall it stands square to it', async () => {
    const home = homeWith(
      room([
        [0, 0],
        [6, 0],
        [0, 6],
      ]),
    );
    const { editor, click } = await drive({ home });
    editor.useTool('piece', { piece: { kind: 'desk', name: 'Desk', size: [1.2, 0.6] } });
    click([2.7, 2.7]);
    const { angle, at } = first(editor.home.pieces);
    expect(angle).toBeCloseTo(315, 6);
    expect((6 - at[0] - at[1]) / Math.SQRT2).toBeCloseTo(0.3, 3);
  });

  it('away from walls, or with alt, it stands where it is put, turned by R', async () => {
    const { editor, click, key } = await drive({ home: homeWith(room(box(0, 0, 8, 8))) });
    editor.useTool('piece', { piece: { kind: 'seat', name: 'Chair', size: [0.5, 0.5] } });
    key('r');
    click([4.02, 4.03]);
    expect(first(editor.home.pieces)).toMatchObject({ at: [4, 4], angle: 90 });
  });

  it('a wardrobe is dragged out', async () => {
    const { editor, drag } = await drive({ home: homeWith(room(box(0, 0, 5, 4))) });
    editor.useTool('fixture', { fixture: { kind: 'wardrobe' } });
    drag([
      [3, 3.42],
      [4, 3.8],
      [4.97, 3.98],
    ]);
    expect(first(editor.home.fixtures)).toMatchObject({ kind: 'wardrobe', outline: box(3, 3.4, 5, 4) });
  });
});

describe('fixtures of true size', () => {
  const inRoom = () => drive({ home: homeWith(room(box(0, 0, 5, 4))) });

  it('a radiator of 1.1 × 0.1 m is drawn on the wall of a small plan, where snapping reaches further than it is deep', async () => {
    const { editor, drag } = await inRoom();
    editor.zoomBy(0.5);
    editor.useTool('fixture', { fixture: { kind: 'radiator' } });
    drag([
      [1, 0],
      [1.5, 0.06],
      [2.1, 0.1],
    ]);
    expect(first(editor.home.fixtures)).toMatchObject({ kind: 'radiator', outline: box(1, 0, 2.1, 0.1) });
  });

  it('one of 0.05 m stands, and less is refused with what to do', async () => {
    const { editor, drag } = await inRoom();
    editor.useTool('fixture', { fixture: { kind: 'other' } });
    drag([
      [1, 0],
      [2, 0.01],
    ]);
    expect([editor.home.fixtures, editor.notice?.text]).toEqual([{}, { kind: 'only-a-line' }]);
    drag([
      [1, 0],
      [2, 0.05],
    ]);
    expect(first(editor.home.fixtures).outline).toEqual(box(1, 0, 2, 0.05));
  });

  it('a press without a drag sets one of common size, its back to the nearest wall, doors into the room', async () => {
    for (const [kind, at, outline, front] of [
      [
        'wardrobe',
        [2.5, 3.2],
        [
          [3.1, 3.4],
          [1.9, 3.4],
          [1.9, 4],
          [3.1, 4],
        ],
        0,
      ],
      ['radiator', [2.5, 0.02], box(2, 0, 3, 0.1), null],
      ['chimney', [1, 2], box(0, 1.4, 0.4, 2.6), null],
    ] as const) {
      const { editor, click } = await inRoom();
      editor.useTool('fixture', { fixture: { kind } });
      click(at);
      const [made] = Object.values(editor.home.fixtures);
      expect(made!.kind).toBe(kind);
      expect([...made!.outline].sort()).toEqual([...outline].map(([x, y]) => [x, y]).sort());
      expect(made!.front).toBe(front);
      // Wall 0 is the one away from the wall of the room.
      const inward = kind === 'chimney' ? made!.outline.slice(0, 2).every(([x]) => x === 0.4) : null;
      expect(inward).not.toBe(false);
      expect(editor.tool).toBe('select');
    }
  });
});

describe('the first room', () => {
  it('dragged out is for sleeping, like one that is typed; later ones are told apart by hand', async () => {
    const { editor, drag } = await drive();
    editor.useTool('room', { room: { by: 'drag' } });
    drag([
      [0, 0],
      [4, 3],
    ]);
    drag([
      [6, 0],
      [9, 3],
    ]);
    expect(Object.values(editor.home.rooms).map(({ use }) => use)).toEqual(['sleeping', 'living']);
  });
});

describe('a length typed while corners are drawn', () => {
  it('goes straight where the pointer nearly shows straight, and as it shows where that is meant slanted', async () => {
    const { editor, click, hover, key } = await drive();
    editor.useTool('room', { room: { by: 'corners' } });
    click([1, 1]);
    // Far out and half a metre off: nothing snaps it square.
    hover([5, 1.5]);
    for (const stroke of '4.2') key(stroke);
    expect(editor.overlay).toContainEqual({ mark: 'length', from: [1, 1], to: [5.2, 1], text: '4.2|' });
    key('Enter');
    hover([7.2, 3]);
    for (const stroke of '2') key(stroke);
    key('Enter');
    const path = editor.overlay.find(({ mark }) => mark === 'ring' || mark === 'path') as {
      points: unknown[];
    };
    expect(path.points.slice(0, 3)).toEqual([
      [1, 1],
      [5.2, 1],
      [6.6142, 2.4142],
    ]);
  });
});

describe('sources, walks, readings', () => {
  it('a point source is one tap, a line is corners and Enter or a double click', async () => {
    const { editor, click, doubleClick, key } = await drive();
    editor.useTool('source', { source: { kind: 'point', name: 'Meter cupboard' } });
    click([2, 2]);
    expect(editor.home.sources.s1).toMatchObject({ kind: 'point', name: 'Meter cupboard', path: [[2, 2]] });
    editor.useTool('source', { source: { kind: 'line', name: 'Street line' } });
    click([1, 1]);
    click([5, 1]);
    key('Enter');
    expect(editor.home.sources.s2!.path).toEqual([
      [1, 1],
      [5, 1],
    ]);
    editor.useTool('source', { source: { kind: 'line', name: 'Cable' } });
    click([1, 3]);
    click([3, 3]);
    doubleClick([3, 5]);
    expect(editor.home.sources.s3!.path).toEqual([
      [1, 3],
      [3, 3],
      [3, 5],
    ]);
  });

  it('a walk is two taps', async () => {
    const { editor, click } = await drive();
    editor.useTool('walk');
    click([1, 0.5]);
    click([1.03, 6]);
    expect(editor.home.walks.w1!.path).toEqual([
      [1, 0.5],
      [1, 6],
    ]);
    expect(editor.tool).toBe('select');
  });

  it('a tap says where the next reading stands; near one that is there it picks that', async () => {
    const { editor, click } = await drive({ home: bedroom() });
    editor.useTool('reading');
    click([3.333, 2.666]);
    expect(editor.readingPlace).toEqual([3.33, 2.67]);
    expect(editor.overlay).toContainEqual({ mark: 'aim', at: [3.33, 2.67], over: false });
    click([0.52, 0.5], { type: 'touch' });
    expect(editor.readingPlace).toBeNull();
    expect(editor.selection).toEqual([{ kind: 'reading', id: 'm1' }]);
  });

  it('a reading may be dragged, without snapping to anything; a drag on paper moves the paper', async () => {
    const { editor, drag } = await drive({ home: bedroom() });
    editor.useTool('reading');
    drag([
      [0.5, 0.5],
      [1, 1],
      [0.837, 0.612],
    ]);
    expect(editor.home.readings.m1!.at[0]).toBeCloseTo(0.837, 3);
    expect(editor.home.readings.m1!.at[1]).toBeCloseTo(0.612, 3);
    const { centre } = editor.camera;
    drag([
      [3.3, 2.6],
      [3.8, 2.6],
    ]);
    expect(editor.camera.centre[0]).toBeCloseTo(centre[0] - 0.5, 6);
    expect(editor.readingPlace).toBeNull();
  });

  it('arrow keys carry the place of the next reading', async () => {
    const { editor, key } = await drive({ home: bedroom() });
    editor.useTool('reading');
    const [x, y] = editor.camera.centre;
    key('ArrowRight');
    key('ArrowUp', { shift: true });
    expect(editor.readingPlace![0]).toBeCloseTo(x + 0.1, 2);
    expect(editor.readingPlace![1]).toBeCloseTo(y + 1, 2);
  });

  it('readings of other rounds do not answer', async () => {
    const home = homeWith(
      { name: 'Round', apply: (draft) => void (draft.rounds.b = { ...draft.rounds.a!, id: 'b' }) },
      room(box(4, 0, 6, 2)),
      addReading({ level: 'l1', at: [2, 2], value: 0.1, round: 'b' }),
    );
    const { editor, click } = await drive({ home });
    editor.setStage('survey');
    click([2, 2]);
    expect(editor.selection).toEqual([]);
    editor.setRound('b');
    click([2, 2]);
    expect(editor.selection).toEqual([{ kind: 'reading', id: 'm1' }]);
  });
});

describe('the scale of a backdrop', () => {
  const withBackdrop = () =>
    homeWith({
      name: 'Backdrop',
      apply: (draft) =>
        void (draft.levels.l1!.backdrop = {
          image: 'data:image/gif;base64,R0lGODlhAQABAAAAACH5BAEKAAEALAAAAAABAAEAAAICTAEAOw==',
          at: [1, 1],
          metresPerPixel: 0.01,
          angle: 0,
          opacity: 0.5,
        }),
    });

  it('is set by two points and a typed length; the first point stays where it is', async () => {
    const { editor, click, type, key } = await drive({ home: withBackdrop() });
    editor.useTool('scale');
    click([2, 2]);
    click([4, 2]);
    expect(editor.scaleLine).toEqual([
      [2, 2],
      [4, 2],
    ]);
    type('5');
    key('Enter');
    expect(editor.home.levels.l1!.backdrop!.metresPerPixel).toBeCloseTo(0.025, 12);
    expect(editor.home.levels.l1!.backdrop!.at).toEqual([-0.5, -0.5]);
    expect([editor.tool, editor.scaleLine]).toEqual(['select', null]);
  });

  it('or from the panel; without a picture it says so', async () => {
    const { editor, click } = await drive({ home: withBackdrop() });
    editor.useTool('scale');
    click([2, 2]);
    click([4, 2]);
    expect(editor.scaleTo(1)).toBeNull();
    expect(editor.home.levels.l1!.backdrop!.metresPerPixel).toBeCloseTo(0.005, 12);
    const other = await drive();
    other.editor.useTool('scale');
    other.click([2, 2]);
    expect(other.editor.notice?.text).toEqual({ kind: 'no-backdrop' });
  });
});
