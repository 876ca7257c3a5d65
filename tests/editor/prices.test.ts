import { describe, expect, it } from 'vitest';
import { change } from '../../src/home/edits/change';
import { setSettings } from '../../src/home/edits/setSettings';
import { setTitle } from '../../src/home/edits/setTitle';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

/** A session with the prices of the rules worked out. */
async function asked() {
  const driver = await drive({ home: bedroom() });
  driver.settle();
  driver.editor.arranging.askPrices();
  driver.planner.work();
  return driver;
}

describe('the prices of the rules', () => {
  it('are asked for by hand only, and of a worker of their own', async () => {
    const { editor, planner, engine, settle } = await drive({ home: bedroom() });
    settle();
    editor.arranging.ask();
    planner.work();
    expect(planner.count('prices')).toBe(0);
    const workers = planner.started;
    editor.arranging.askPrices();
    expect([planner.count('prices'), planner.started, engine.count('prices')]).toEqual([1, workers + 1, 0]);
    expect(editor.arranging.prices.state).toBe('running');
    planner.work();
    const { state, prices } = editor.arranging.prices;
    expect(state).toBe('idle');
    expect(prices!.map(({ rule }) => rule)).toContain('strips');
    expect(editor.arranging.state.proposal).not.toBeNull();
  });

  it('without a map are not asked for', async () => {
    const { editor, planner } = await drive({ home: bedroom() });
    editor.arranging.askPrices();
    expect(planner.count('prices')).toBe(0);
  });

  it('go stale when a piece or a rule changes and fresh again by undo; what they do not depend on leaves them', async () => {
    const { editor } = await asked();
    editor.run(setTitle('Another name'));
    expect(editor.arranging.prices.stale).toBe(false);
    editor.run(change({ kind: 'piece', id: 'p1' }, { at: [2.5, 2] }));
    expect(editor.arranging.prices.stale).toBe(true);
    editor.undo();
    expect(editor.arranging.prices.stale).toBe(false);
    editor.run(setSettings({ rules: { ...editor.home.settings.rules, landing: 0.4 } }));
    expect(editor.arranging.prices.stale).toBe(true);
  });

  it('can be cancelled, which ends their worker and not the planner', async () => {
    const { editor, planner, settle } = await drive({ home: bedroom() });
    settle();
    editor.arranging.ask();
    editor.arranging.askPrices();
    editor.arranging.cancelPrices();
    expect(editor.arranging.prices).toMatchObject({ state: 'idle', prices: null });
    expect(editor.arranging.state.state).toBe('running');
    expect(planner.ended).toBe(1);
  });

  it('tell how far they are, one rule after another', async () => {
    const { editor, planner, settle } = await drive({ home: bedroom() });
    settle();
    const shares: number[] = [];
    editor.subscribe('proposal', () => shares.push(editor.arranging.prices.progress));
    editor.arranging.askPrices();
    planner.work();
    const rising = shares.filter((share) => share > 0);
    // Seven rules of which one is off already by its default, and the strips of the bed.
    expect(rising).toHaveLength(editor.arranging.prices.prices!.length);
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
  });
});
