import { describe, expect, it } from 'vitest';
import type { Alternative, PlacedPiece, Proposal } from '../../src/engine/arranging/arrange';
import { addOpening, addPiece } from '../../src/home/edits/add';
import { otherAnswers, pointText, shownTitle } from '../../src/words/otherAnswers';
import { box, homeWith, room } from '../support/homes';

const single = (who: string, x: number) =>
  addPiece({
    kind: 'bed',
    level: 'l1',
    at: [x, 3],
    size: [0.9, 2],
    uses: [{ who, hours: 8 }],
  });
// Two rooms side by side; two like beds in the first, a wide one in the second.
const home = homeWith(
  room(box(0, 0, 5, 4)),
  room(box(5, 0, 9, 4)),
  addOpening({ room: 'r1', kind: 'window', wall: 2, offset: 1 }),
  single('A', 0.5),
  single('B', 2),
  addPiece({ kind: 'bed', level: 'l1', at: [6, 3], size: [1.6, 2], uses: [{ who: 'C', hours: 8 }] }),
);
const named = {
  ...home,
  rooms: { r1: { ...home.rooms.r1!, name: 'Front room' }, r2: { ...home.rooms.r2!, name: 'Back room' } },
};

const at = (id: string, roomId: string, x: number, y: number, angle: number) =>
  ({ id, room: roomId, level: 'l1', at: [x, y], angle, moves: true, breaks: [] }) as unknown as PlacedPiece;
const NORTH = { p1: at('p1', 'r1', 0.5, 3, 0), p2: at('p2', 'r1', 2, 3, 0), p3: at('p3', 'r2', 6, 3, 0) };
type Change = Partial<Record<keyof typeof NORTH, PlacedPiece>>;
const pieces = (change: Change) => Object.values({ ...NORTH, ...change });
const alternative = (piece: string, differs: 'room' | 'wall', change: Change) =>
  ({ piece, differs, pieces: pieces(change) }) as unknown as Alternative;
const proposal = (...alternatives: Alternative[]) =>
  ({ about: 'p1', pieces: pieces({}), alternatives, rooms: [] }) as unknown as Proposal;
const titles = (...alternatives: Alternative[]) =>
  otherAnswers(named, proposal(...alternatives)).map(({ title }) => title);

const west = at('p1', 'r1', 1, 1, 90);
const south = at('p1', 'r1', 2, 1, 180);

describe('the titles of other answers', () => {
  it('name the wall by where it lies, and the room', () => {
    expect(
      titles(
        alternative('p1', 'wall', { p1: west }),
        alternative('p1', 'wall', { p1: south }),
        alternative('p1', 'room', { p1: at('p1', 'r2', 8, 3, 0) }),
      ),
    ).toEqual(['Head to the west wall', 'Head to the south wall', 'In Back room']);
  });

  it('fault: a wall did not name its room where the piece may stand in others', () => {
    const rooms = [{ id: 'r1' }, { id: 'r2' }] as unknown as Proposal['rooms'];
    const asked = {
      ...proposal(
        alternative('p1', 'wall', { p1: west }),
        alternative('p3', 'wall', { p3: at('p3', 'r2', 6, 1, 180) }),
      ),
      rooms,
    };
    expect(otherAnswers(named, asked).map(({ title }) => title)).toEqual([
      'Front room, head to the west wall',
      'Bed C in Back room, head to the south wall',
    ]);
  });

  it('fault: another answer that was shown had the title of the best', () => {
    const asked = proposal(
      alternative('p1', 'wall', { p1: west }),
      alternative('p3', 'wall', { p3: at('p3', 'r2', 6, 1, 180) }),
    );
    const shown = (index: number) => shownTitle(named, asked, asked.alternatives[index - 1]!, index);
    expect([shown(1), shown(2)]).toEqual(['Bed, head to the west wall', 'Bed C head to the south wall']);
  });

  it('say which piece it is where it is another than the one that is spoken of', () => {
    expect(titles(alternative('p3', 'wall', { p3: at('p3', 'r2', 6, 1, 180) }))).toEqual([
      'Bed C head to the south wall',
    ]);
  });

  it('say who would change rooms with it', () => {
    expect(
      titles(alternative('p1', 'room', { p1: at('p1', 'r2', 8, 3, 0), p3: at('p3', 'r1', 4, 3, 0) })),
    ).toEqual(['In Back room, bed C changes rooms']);
  });

  it('differ where two share the first piece’s wall: the other pieces tell them apart', () => {
    expect(
      titles(
        alternative('p1', 'wall', { p1: west }),
        alternative('p1', 'wall', { p1: west, p3: at('p3', 'r2', 6, 1, 180) }),
      ),
    ).toEqual(['Head to the west wall', 'Head to the west wall, bed C head to the south wall']);
  });

  it('count answers with the same walls for every piece as one', () => {
    expect(
      titles(
        alternative('p3', 'wall', { p3: at('p3', 'r2', 6, 1, 180) }),
        alternative('p3', 'wall', { p3: at('p3', 'r2', 8, 1, 180), p1: at('p1', 'r1', 4, 3, 0) }),
      ),
    ).toEqual(['Bed C head to the south wall']);
  });

  it('count two like beds that have changed places with each other as one answer', () => {
    const swapped = { p1: { ...NORTH.p2, id: 'p1' }, p2: { ...NORTH.p1, id: 'p2' } };
    const oneWest = alternative('p1', 'wall', { p1: west });
    const otherWest = alternative('p2', 'wall', { p2: { ...west, id: 'p2' } });
    const found = otherAnswers(named, proposal(alternative('p1', 'wall', swapped), oneWest, otherWest));
    expect(found.map(({ index, title }) => [index, title])).toEqual([[2, 'Head to the west wall']]);
    // A wider bed is not like them.
    const third = { p3: at('p3', 'r1', 1, 1, 90), p1: at('p1', 'r2', 6, 3, 0) };
    expect(titles(oneWest, alternative('p3', 'room', third))).toHaveLength(2);
  });
});

it.each([
  [0, 'north'],
  [22, 'north'],
  [23, 'north-east'],
  [-90, 'west'],
  [180, 'south'],
  [337, 'north-west'],
  [338, 'north'],
  [450, 'east'],
])('%d degrees from north is %s', (bearing, text) => expect(pointText(bearing)).toBe(text));
