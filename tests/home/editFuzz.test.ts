import fc from 'fast-check';
import { applyPatches, enablePatches, produceWithPatches, setAutoFreeze, type Patch } from 'immer';
import { describe, expect, it } from 'vitest';
import * as adds from '../../src/home/edits/add';
import { change } from '../../src/home/edits/change';
import { drawGrounds } from '../../src/home/edits/drawGrounds';
import { duplicate } from '../../src/home/edits/duplicate';
import { insertCorner } from '../../src/home/edits/insertCorner';
import { keepArrangement } from '../../src/home/edits/arrangements';
import { useArrangement } from '../../src/home/edits/takePlaces';
import { moveBy } from '../../src/home/edits/moveBy';
import { moveHandle } from '../../src/home/edits/moveHandle';
import { remove } from '../../src/home/edits/remove';
import { removeCorner } from '../../src/home/edits/removeCorner';
import { rotate } from '../../src/home/edits/rotate';
import { setReport } from '../../src/home/edits/setReport';
import { setSettings } from '../../src/home/edits/setSettings';
import { setNorth, setTitle } from '../../src/home/edits/setTitle';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import { COLLECTIONS } from '../../src/home/ids';
import { integrity } from '../../src/home/integrity';
import { KINDS } from '../../src/home/kinds/kinds';
import { inOrder } from '../../src/home/order';
import { problemText } from '../../src/words/problems';
import { anyHome } from '../support/anyHome';
import type { Edit } from '../../src/home/edits/edit';
import type { Home, Id, KindName, Point, Ref } from '../../src/home/home';
import type { Problem } from '../../src/home/problem';

/** Fixed, so that what the fuzz reached can be counted; other seeds are for the long run at a desk. */
const SEED = Number(process.env.FUZZ_SEED ?? 20261125);

enablePatches();
setAutoFreeze(true);

/** One edit through immer, as the editor runs it: a refused edit leaves the home as it was. */
function run(home: Home, edit: Edit): { home: Home; undo: Patch[]; redo: Patch[]; problem: Problem | null } {
  let problem: Problem | null = null;
  const [next, redo, undo] = produceWithPatches(home, (draft) => {
    problem = edit.apply(draft as Home) ?? null;
  });
  return problem ? { home, undo: [], redo: [], problem } : { home: next, undo, redo, problem };
}

interface Step {
  what: number;
  which: number;
  at: Point;
  number: number;
  several: boolean;
}

const coordinate = fc.integer({ min: -60_000, max: 60_000 }).map((n) => n / 10_000);
const step: fc.Arbitrary<Step> = fc.record({
  what: fc.nat(29),
  which: fc.nat(),
  at: fc.tuple(coordinate, coordinate),
  number: fc.nat(1000),
  several: fc.boolean(),
});

const refsOf = (home: Home): Ref[] =>
  (Object.keys(KINDS) as KindName[]).flatMap((kind) =>
    inOrder<{ id: Id }>(home[KINDS[kind].collection]).map(({ id }) => ({ kind, id })),
  );

/** The edit that a step means in a home, sensible or not: some are refused. */
function editOf(home: Home, { what, which, at, number, several }: Step): Edit {
  const all = refsOf(home);
  const pick = <T>(list: readonly T[], n = which): T | undefined => list[n % Math.max(1, list.length)];
  const one = pick(all) ?? { kind: 'room', id: 'r999' };
  const refs = several ? [one, pick(all, which + 1) ?? one, pick(all, which + 7) ?? one] : [one];
  const unique = refs.filter((ref, i) => refs.findIndex(({ id }) => id === ref.id) === i);
  const rooms = Object.keys(home.rooms);
  const room = pick(rooms) ?? 'r999';
  const members = COLLECTIONS.flatMap((collection) =>
    Object.keys(home[collection]).map((id) => ({ collection, id })),
  );
  const [x, y] = at;
  const square: Point[] = [at, [x + 3, y], [x + 3, y + 2], [x, y + 2]];
  const edits: (() => Edit)[] = [
    () => adds.addRoom({ outline: square, use: 'sleeping', name: 'New' }),
    () => adds.addOpening({ room, wall: number % 5, offset: (number % 20) / 10, width: 0.8 }),
    () => adds.addFixture({ outline: square, kind: 'radiator' }),
    () => adds.addPiece({ kind: 'bed', at, angle: number % 360 }),
    () => adds.addSource({ kind: 'line', path: [at, [x + 5, y]] }),
    () => adds.addReading({ at, value: number / 100, round: pick(Object.keys(home.rounds)) ?? null }),
    () => adds.addWalk({ path: [at, [x, y + 9]] }),
    () => adds.addLevel({ name: 'Upper floor', elevation: 2.8 }),
    () => adds.addMeter({ name: 'Another' }),
    () => adds.addRound({ kind: 'supplyOff', name: 'Off' }),
    () => adds.addRecording({ start: '2026-03-02T18:00:00Z', samples: [[0, 0.1]] }),
    () =>
      adds.addComparison({
        meter: pick(Object.keys(home.meters)) ?? 'g9',
        reference: pick(Object.keys(home.meters), which + 1) ?? 'g9',
      }),
    () => adds.addGuideline({ name: 'Ours', edges: [{ value: 0.1, word: 'above' }] }),
    () => moveBy(unique, at),
    () => moveBy(unique, at),
    () => rotate(unique, (number % 24) * 15),
    () => rotate(unique, number / 7, at),
    () => duplicate(unique),
    () => {
      const kind = KINDS[one.kind] as (typeof KINDS)['room'];
      const thing = home[kind.collection][one.id];
      const handle = thing && pick(kind.handles(home, thing as never), number);
      return moveHandle(one, handle?.key ?? 'none', at);
    },
    () => insertCorner({ kind: 'room', id: room }, number % 5, at),
    () => removeCorner({ kind: 'room', id: room }, number % 5),
    () => insertCorner(one, number % 4, at),
    () => remove(unique),
    () => remove([pick(members)!]),
    () => change(one, { name: `Name ${number}` }),
    () => change({ kind: 'room', id: room }, { outline: square }),
    () => setSettings({ target: number / 1000, method: 'kriging' }),
    () => (several ? setTitle(`Home ${number}`) : setNorth(number % 360)),
    () => (several ? keepArrangement('Kept') : useArrangement(pick(Object.keys(home.arrangements)) ?? 'v9')),
    () => (several ? setReport({ by: `Nobody ${number}` }) : drawGrounds(pick(Object.keys(home.levels))!)),
  ];
  return edits[what]!();
}

const idsOf = (home: Home): Id[] => COLLECTIONS.flatMap((name) => Object.keys(home[name]));

describe('any sequence of edits', () => {
  it('keeps the home sound, gives no id twice, and is undone and redone to the byte', () => {
    const done = new Map<string, number>();
    fc.assert(
      fc.property(anyHome, fc.array(step, { minLength: 20, maxLength: 40, size: 'max' }), (start, steps) => {
        let home = start;
        const history: { undo: Patch[]; redo: Patch[] }[] = [];
        const retired = new Set<Id>();
        for (const each of steps) {
          const before = home;
          const edit = editOf(home, each);
          const result = run(home, edit);
          home = result.home;
          if (result.problem) {
            expect(problemText(result.problem)).toMatch(/\.$/);
            continue;
          }
          done.set(edit.name, (done.get(edit.name) ?? 0) + 1);
          history.push(result);
          expect(integrity(home), edit.name).toEqual([]);
          const [old, now] = [new Set(idsOf(before)), new Set(idsOf(home))];
          for (const id of now)
            if (!old.has(id)) expect(retired, `${edit.name} gave out ${id} again`).not.toContain(id);
          for (const id of old) if (!now.has(id)) retired.add(id);
        }
        const text = serialiseHome(home);
        const read = parseHome(text);
        expect(read.ok && serialiseHome(read.home)).toBe(text);

        const undone = history.reduceRight((h, { undo }) => applyPatches(h, undo), home);
        expect(serialiseHome(undone)).toBe(serialiseHome(start));
        expect(undone).toEqual(start);
        const redone = history.reduce((h, { redo }) => applyPatches(h, redo), undone);
        expect(serialiseHome(redone)).toBe(text);
      }),
      { numRuns: 80, seed: SEED },
    );
    // A fuzz whose edits are mostly refused proves nothing.
    expect(done.size).toBeGreaterThan(25);
    expect([...done.values()].reduce((sum, n) => sum + n)).toBeGreaterThan(1200);
  });

  it('an edit that changes nothing leaves no patch', () => {
    fc.assert(
      fc.property(anyHome, fc.nat(), (home, which) => {
        const refs = refsOf(home);
        if (refs.length === 0) return;
        const ref = refs[which % refs.length]!;
        const thing = home[KINDS[ref.kind].collection][ref.id]!;
        const { id: _id, ...fields } = thing;
        expect(run(home, change(ref, fields)).redo).toEqual([]);
        expect(run(home, moveBy(refs, [0, 0])).redo).toEqual([]);
        expect(run(home, setTitle(home.title)).redo).toEqual([]);
        expect(run(home, setSettings({ ...home.settings })).redo).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('moving there and back is the same home, to the byte', () => {
    fc.assert(
      fc.property(anyHome, coordinate, coordinate, (home, dx, dy) => {
        // Openings slide along walls and stop at corners; they have a law of their own.
        const refs = refsOf(home).filter(({ kind }) => kind !== 'opening');
        const there = run(home, moveBy(refs, [dx, dy]));
        const back = run(there.home, moveBy(refs, [-dx, -dy]));
        expect(back.problem).toBeNull();
        expect(serialiseHome(back.home)).toBe(serialiseHome(home));
      }),
      { numRuns: 60 },
    );
  });
});
