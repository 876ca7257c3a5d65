import { describe, expect, it } from 'vitest';
import { answersAt, answerSince, type Answer } from '../../../src/engine/arranging/answer';
import { arrange } from '../../../src/engine/arranging/arrange';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { bed, box, desk, door, fitted, readingsOf, request, room } from './homes';
import { furnishedHome } from '../../support/generators/furnishedHome';
import { mapOver } from '../../../src/engine/arranging/mapOver';
import { RULE_DEFAULTS } from '../../../src/engine/arranging/ruleSettings';
import { random } from '../../../src/engine/algebra/random';
import type { ArrangeRequest } from '../../../src/engine/arranging/request';
import type { Put } from '../../../src/engine/arranging/place';

/** An answer, whichever order it names its pieces and their rules in, to ten digits: sums may be taken in another order. */
const said = (answer: Answer): Answer => {
  const pieces = answer.pieces
    .map((piece) => ({ ...piece, breaks: piece.breaks.toSorted((a, b) => a.kind.localeCompare(b.kind)) }))
    .sort((a, b) => a.id.localeCompare(b.id));
  const rounded = (_: string, value: unknown) =>
    typeof value === 'number' ? Number(value.toPrecision(10)) : value;
  return JSON.parse(JSON.stringify({ ...answer, pieces }, rounded)) as Answer;
};

const at = (asked: ArrangeRequest, puts: readonly Put[]) => answersAt(asked, fieldsOf(asked.fitted))(puts);

/** Two rooms one over the other on a level, a third on the next; field falls to the right and upstairs. */
function twoLevels(): ArrangeRequest {
  const field = (x: number) => 0.5 / (x + 0.5);
  const upstairs = (x: number) => 0.1 / (x + 0.5);
  return request({
    fitted: fitted([...readingsOf(field, [0, 0, 5, 4]), ...readingsOf(upstairs, [0, 0, 5, 4], 1, 'l2')]),
    rooms: [room('down', box(0, 0, 5, 4)), room('up', box(0, 0, 5, 4), 'sleeping', 'l2')],
    openings: [door('down', 0, 3), door('up', 0, 3)],
    pieces: [bed({ at: [1, 3] }), desk({ at: [4, 3.7] })],
  });
}

describe('an answer at places chosen by hand', () => {
  it.each([2, 4, 5, 6])('is the planner’s own where the places are the planner’s (seed %i)', (seed) => {
    const asked = furnishedHome(random(seed), seed % 2 === 0 ? 2 : 5);
    const best = arrange(asked);
    for (const answer of [best, ...best.alternatives])
      expect(said(answer)).toMatchObject(said(at(asked, answer.pieces)));
  });

  it('fault: how near the planner’s own bed stands to a radiator was not said', () => {
    const narrow = request({
      fitted: fitted(readingsOf((x) => 0.5 / (x + 0.5), [0, 0, 2, 4])),
      rooms: [room('r1', box(0, 0, 1.15, 4))],
      fixtures: [
        { id: 'radiator', level: 'l1', kind: 'radiator', outline: box(0, 0.5, 0.06, 3.5), front: null },
      ],
      rules: { ...RULE_DEFAULTS, bedToRadiator: 0.3 },
      pieces: [bed({ at: [0.6, 3], access: { left: 0, right: 0, foot: 0 } })],
    });
    const answer = arrange(narrow);
    const [{ breaks }] = answer.pieces;
    expect(breaks.map(({ kind }) => kind)).toEqual(['near-radiator']);
    expect(breaks[0].metres).toBeGreaterThanOrEqual(0);
    expect(breaks[0].metres).toBeLessThan(0.3);
    expect(said(answer)).toMatchObject(said(at(narrow, answer.pieces)));
  });

  it('is the same after other places as at the first asking', () => {
    const asked = furnishedHome(random(8), 5);
    const { pieces } = arrange(asked);
    const judge = answersAt(asked, fieldsOf(asked.fitted));
    const way = [0, 0.1, 0.6, 1.5, 0].map((dx) =>
      pieces.map((piece, i) =>
        i === 0 ? { ...piece, at: [piece.at[0] + dx, piece.at[1]] as const } : piece,
      ),
    );
    for (const puts of way) expect(said(judge(puts))).toEqual(said(at(asked, puts)));
  });

  it('keeps levels, and a piece is lower where the field is', () => {
    const asked = twoLevels();
    const answer = at(asked, [{ id: 'bed', level: 'l2', at: [1, 3], angle: 0 }]);
    const [placed, ...others] = answer.pieces;
    expect(others).toEqual([]);
    expect(placed).toMatchObject({ id: 'bed', level: 'l2', room: 'up', moves: true, breaks: [] });
    // A fifth of the field is a fifth of the dose, as far as the readings can tell.
    expect(placed.after!.dose / placed.before!.dose).toBeCloseTo(0.2, 1);
    expect(answer.odds).toBeGreaterThan(0.9);
    expect(answer.faults).toEqual([]);
  });

  it('names every rule that is broken there, among the others where they are put', () => {
    const asked = twoLevels();
    const desk = { id: 'desk', level: 'l1', at: [1, 3.7] as const, angle: 0 };
    const onBed = at(asked, [{ id: 'bed', level: 'l1', at: [1, 3], angle: 0 }, desk]);
    const kinds = (answer: Answer, id: string) =>
      answer.pieces.find((piece) => piece.id === id)!.breaks.map(({ kind }) => kind);
    expect(kinds(onBed, 'bed')).toContain('overlap');
    expect(kinds(onBed, 'desk')).toContain('overlap');
    expect(onBed.faults).toContainEqual({ piece: expect.any(String), rule: 'piece' });
    // The bed goes away: nothing is left to complain of, though it stands there still.
    const away = at(asked, [{ id: 'bed', level: 'l2', at: [1, 3], angle: 0 }, desk]);
    expect([...kinds(away, 'bed'), ...kinds(away, 'desk'), ...away.faults]).toEqual([]);
    const beforeDoor = at(asked, [{ id: 'bed', level: 'l1', at: [3.4, 1], angle: 180 }]);
    expect(kinds(beforeDoor, 'bed')).toContain('before-door');
    expect(beforeDoor.faults).toContainEqual({ piece: 'bed', rule: 'door' });
    const inWall = at(asked, [{ id: 'bed', level: 'l1', at: [9, 9], angle: 0 }]);
    expect(kinds(inWall, 'bed')).toEqual(['unsupported', 'outside-room']);
  });
});

describe('fault: a bed dragged outside the house was advised', () => {
  /** A bedroom that is read everywhere, and a hall twelve metres long that is read at its near end only. */
  const home = (more: Partial<ArrangeRequest> = {}) =>
    request({
      fitted: fitted(readingsOf((x) => 0.5 / (x + 0.5), [0, 0, 5, 4])),
      rooms: [room('bedroom', box(0, 0, 5, 4)), room('hall', box(5.1, 0, 17, 4))],
      openings: [door('bedroom', 0, 3)],
      pieces: [bed({ at: [1, 3] }), desk({ at: [0.4, 1.5], uses: [{ who: 'B', side: 'middle', hours: 4 }] })],
      ...more,
    });
  const put = (x: number, y: number): Put[] => [{ id: 'bed', level: 'l1', at: [x, y], angle: 0 }];
  const advised = ({ pieces: [{ odds, decision }], ...whole }: Answer) => [
    whole.odds,
    whole.decision,
    odds,
    decision,
  ];

  it.each([
    ['far from the house', put(2, 14), ['unsupported', 'outside-room']],
    ['over the outer wall, with readings near', put(4.4, -0.6), ['outside-room']],
    ['in a room, with no reading near', put(15, 2.995), ['unsupported']],
  ])('it is judged to stay %s', (_, puts, rules) => {
    for (const aim of ['mean', 'worst-off'] as const) {
      const answer = at(home({ aim }), puts);
      expect(answer.pieces[0].breaks.map(({ kind }) => kind)).toEqual(rules);
      expect(advised(answer)).toEqual([null, 'stay', null, 'stay']);
      expect(answer.people.map(({ odds, decision }) => [odds, decision])).toEqual([
        [null, 'stay'],
        [null, 'stay'],
      ]);
      expect(answer.readAt).toEqual([]);
    }
  });

  it('nor is it advised from there, before or after it was taken, as it is inside', () => {
    const outside = home({ pieces: [bed({ at: [2, 14] })] });
    expect(advised(at(outside, put(4, 2.995)))).toEqual([null, 'stay', null, 'stay']);
    const inside = home();
    expect(advised(at(inside, put(4.5, 2.995)))).toEqual([
      expect.any(Number),
      'move',
      expect.any(Number),
      'move',
    ]);
    const back = (asked: ArrangeRequest, found: readonly Put[]) =>
      answerSince(asked, mapOver(asked, fieldsOf(asked.fitted), asked.fitted), found)!;
    expect(advised(back(outside, put(1, 3)))).toEqual([null, 'stay', null, 'stay']);
    expect(back(home({ pieces: [bed({ at: [4.5, 2.995] })] }), put(1, 3)).decision).toBe('move');
  });
});
