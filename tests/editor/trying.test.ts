import { describe, expect, it } from 'vitest';
import { addReading, addSource } from '../../src/home/edits/add';
import { keepArrangement, renameArrangement } from '../../src/home/edits/arrangements';
import { placePieces } from '../../src/home/edits/placePieces';
import { setSettings } from '../../src/home/edits/setSettings';
import { takePlaces, useArrangement } from '../../src/home/edits/takePlaces';
import { tryEdit } from '../../src/editor/store';
import type { ArrangementWorth } from '../../src/engine/whatIf/compareArrangements';
import type { Home } from '../../src/home/home';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

const after = (home: Home, ...edits: Parameters<typeof tryEdit>[1][]): Home =>
  edits.reduce((before, edit) => {
    const tried = tryEdit(before, edit);
    if ('problem' in tried) throw new Error(JSON.stringify(tried.problem));
    return tried.change.home;
  }, home);

/** A bedroom with an appliance at its left wall that makes most of its field: 0.25 µT at a metre, falling as 1/r², over 0.03. */
const marked = (method: Home['settings']['method'] = 'source-kriging'): Home => {
  const bare = bedroom();
  const field = (x: number, y: number) => Math.hypot(0.25 / ((x - 0.2) ** 2 + (y - 2) ** 2 + 0.04), 0.03);
  const readings = [0.6, 1.4, 2.2, 3, 3.8, 4.6].flatMap((x) =>
    [0.5, 1.5, 2.5, 3.5].map((y) =>
      addReading({ level: 'l1', at: [x, y], value: Number(field(x, y).toFixed(4)) }),
    ),
  );
  return after(
    { ...bare, readings: {} },
    addSource({ kind: 'point', name: 'Heat pump', level: 'l1', path: [[0.2, 2]], height: 0.8, falloff: 2 }),
    ...readings,
    setSettings({ method }),
  );
};

async function arranging(home = marked()) {
  const driver = await drive({ home });
  driver.editor.setStage('arrange');
  const rest = () => {
    driver.clock.pass(2000);
    driver.engine.work();
    driver.planner.work();
    driver.clock.pass(2000);
    driver.planner.work();
  };
  rest();
  return { ...driver, rest };
}

const doseOf = ({
  results,
}: {
  results: { assessment: { pieces: { id: string; dose: { dose: number } }[] } | null };
}) => results.assessment!.pieces.find(({ id }) => id === 'p1')!.dose.dose;

describe('a marked source is tried', () => {
  it('off: the map and the doses are those without it, the home and what was measured are as they were', async () => {
    const { editor, rest } = await arranging();
    const [home, measured, before] = [editor.home, editor.measured, doseOf(editor)];
    editor.trying.change('s1', { scale: 0 });
    rest();
    expect(doseOf(editor)).toBeLessThan(before / 2);
    expect(editor.results.assessment!.pictures).not.toBe(measured.assessment!.pictures);
    expect(editor.home).toBe(home);
    expect(editor.measured.assessment).toBe(measured.assessment);
    expect(editor.canUndo).toBe(false);
    editor.trying.end();
    expect(editor.results).toBe(editor.measured);
    expect(editor.trying.changes).toEqual([]);
  });

  it('half, then as it is: nothing is tried any more', async () => {
    const { editor, rest } = await arranging();
    editor.trying.change('s1', { scale: 0.5 });
    rest();
    expect(editor.trying.changes).toEqual([{ id: 's1', scale: 0.5, path: null }]);
    editor.trying.change('s1', { scale: 1 });
    expect(editor.trying.changes).toEqual([]);
    expect(editor.results).toBe(editor.measured);
  });

  it('leaving the stage ends it', async () => {
    const { editor, rest } = await arranging();
    editor.trying.change('s1', { scale: 0 });
    rest();
    editor.setStage('map');
    expect(editor.trying.changes).toEqual([]);
    expect(editor.results).toBe(editor.measured);
  });

  it('a source that is removed is no longer tried', async () => {
    const { editor, rest } = await arranging();
    editor.trying.change('s1', { scale: 0 });
    rest();
    editor.select([{ kind: 'source', id: 's1' }]);
    editor.key({ key: 'Delete', shift: false, alt: false, command: false });
    expect(editor.trying.changes).toEqual([]);
  });

  it('the planner works on the map that is tried, and an answer of it is stale without', async () => {
    const { editor, rest } = await arranging();
    editor.arranging.ask();
    rest();
    const now = editor.arranging.state.proposal!.pieces[0]!.at[0];
    editor.trying.change('s1', { scale: 0 });
    rest();
    expect(editor.arranging.state.stale).toBe(true);
    editor.arranging.ask();
    rest();
    expect(editor.arranging.state).toMatchObject({ stale: false });
    expect(editor.arranging.state.proposal!.after).toBeLessThan(0.5 * doseOf({ results: editor.measured }));
    expect(now).toBeGreaterThan(1.5);
    editor.trying.end();
    expect(editor.arranging.state.stale).toBe(true);
  });

  it('a map that knows no sources says so, and another method brings the answer', async () => {
    const { editor, rest } = await arranging(marked('kriging'));
    editor.trying.change('s1', { scale: 0 });
    rest();
    expect(editor.trying.problem).toEqual({ kind: 'map-without-sources', method: 'kriging' });
    expect(editor.results).toBe(editor.measured);
    editor.run(setSettings({ method: 'source-kriging' }));
    rest();
    expect(editor.trying.problem).toBeNull();
    expect(doseOf(editor)).toBeLessThan(doseOf({ results: editor.measured }));
  });
});

describe('a source that is tried elsewhere', () => {
  it('is dragged, with pictures on the way and one whole map at the end; the home keeps it where it is', async () => {
    const { editor, rest, drag, lift, clock, planner } = await arranging();
    editor.trying.change('s1', { path: [[0.2, 2]] });
    rest();
    // To be moved, and still where it is.
    expect(editor.trying.changes).toEqual([]);
    expect(editor.results).toBe(editor.measured);
    const asked = () => planner.asks.flatMap((ask) => (ask.ask === 'whatIf' ? [ask.request.rough] : []));
    const before = asked().length;
    drag(
      [
        [0.2, 2],
        [2, 2],
        [4, 1],
      ],
      { hold: true, alt: true },
    );
    clock.pass(50);
    planner.work();
    expect(asked().slice(before)).toEqual([true]);
    lift([4, 1], { alt: true });
    rest();
    expect(asked().slice(before)).toEqual([true, false]);
    expect(editor.trying.changes).toEqual([{ id: 's1', scale: 1, path: [[4, 1]] }]);
    expect(editor.home.sources.s1!.path).toEqual([[0.2, 2]]);
    expect(editor.canUndo).toBe(false);
    expect(doseOf(editor)).toBeLessThan(doseOf({ results: editor.measured }));
  });

  it('is nudged by the arrow keys; a drag that is given up leaves it where it was', async () => {
    const { editor, rest, drag, key, click } = await arranging();
    editor.trying.change('s1', { path: [[0.2, 2]] });
    rest();
    click([0.2, 2]);
    expect(editor.selection).toEqual([{ kind: 'source', id: 's1' }]);
    key('ArrowRight');
    key('ArrowUp', { shift: true });
    expect(editor.trying.changes[0]!.path![0]![0]).toBeCloseTo(0.25, 9);
    expect(editor.trying.changes[0]!.path![0]![1]).toBeCloseTo(2.5, 9);
    drag(
      [
        [0.25, 2.5],
        [2, 2],
        [4, 1],
      ],
      { hold: true },
    );
    key('Escape');
    expect(editor.trying.changes[0]!.path![0]![1]).toBeCloseTo(2.5, 9);
    expect(editor.home.sources.s1!.path).toEqual([[0.2, 2]]);
  });

  it('is not moved by a hand unless that is what is tried', async () => {
    const { editor, drag } = await arranging();
    drag([
      [0.2, 2],
      [2, 2],
      [4, 1],
    ]);
    expect(editor.trying.changes).toEqual([]);
    expect(editor.home.sources.s1!.path).toEqual([[0.2, 2]]);
  });
});

describe('arrangements compared in a session', () => {
  const ids = (compared: readonly { id: string }[] | null) => compared?.map(({ id }) => id);

  it('as found first, then as it stands, then those kept; nothing is asked where none is', async () => {
    const { editor, rest, planner } = await arranging();
    expect(planner.count('compare')).toBe(0);
    editor.run(
      keepArrangement('By the window', { pieces: [{ id: 'p1', level: 'l1', at: [4, 3], angle: 0 }] }),
    );
    rest();
    expect(ids(editor.trying.compared.compared)).toEqual(['now', 'v1']);
    editor.run(takePlaces([{ id: 'p1', level: 'l1', at: [3, 3], angle: 0 }]));
    rest();
    expect(ids(editor.trying.compared.compared)).toEqual(['v2', 'now', 'v1']);
    const [found, now, kept] = editor.trying.compared.compared as ArrangementWorth[];
    expect(found!.odds).toBeNull();
    expect(now!.odds).toBeGreaterThan(0.5);
    expect(kept!.whole!.dose).toBeLessThan(now!.whole!.dose);
    expect(now!.whole!.dose).toBeLessThan(found!.whole!.dose);
  });

  it('a new name asks nothing; a home that changes twice in a row asks once', async () => {
    const { editor, rest, planner } = await arranging();
    editor.run(keepArrangement('One'));
    rest();
    const before = planner.count('compare');
    editor.run(renameArrangement('v1', 'Another'));
    rest();
    expect(planner.count('compare')).toBe(before);
    editor.run(placePieces([{ id: 'p1', level: 'l1', at: [3, 3], angle: 0 }]));
    editor.run(placePieces([{ id: 'p1', level: 'l1', at: [3.5, 3], angle: 0 }]));
    rest();
    expect(planner.count('compare')).toBe(before + 1);
  });

  it('what is tried is a column of its own, and can be kept with its sources', async () => {
    const { editor, rest } = await arranging();
    editor.trying.change('s1', { scale: 0 });
    rest();
    expect(ids(editor.trying.compared.compared)).toEqual(['now', 'tried']);
    const [now, tried] = editor.trying.compared.compared as ArrangementWorth[];
    expect(tried!.whole!.dose).toBeLessThan(now!.whole!.dose);
    expect(tried).toMatchObject({ odds: null, apart: true });
    editor.run(
      keepArrangement('Without it', {
        sources: editor.trying.changes.map(({ id, scale }) => ({ id, scale, path: null })),
      }),
    );
    editor.trying.end();
    rest();
    expect(ids(editor.trying.compared.compared)).toEqual(['now', 'v1']);
    const kept = editor.trying.compared.compared![1] as ArrangementWorth;
    expect(kept.whole).toEqual(tried!.whole);
    editor.run(useArrangement('v1'));
    expect(editor.home.sources.s1!.path).toEqual([[0.2, 2]]);
  });
});
