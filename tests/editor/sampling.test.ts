import { describe, expect, it } from 'vitest';
import { change } from '../../src/home/edits/change';
import { setSettings } from '../../src/home/edits/setSettings';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

const sampling = { method: 'source-sampling' } as const;

describe('sources are sampled beside the map that is there at once', () => {
  it('the quick map stands meanwhile, with the share done; then it is drawn anew, once', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    const quick = editor.results.assessment!;
    expect(quick.fitted.method).not.toBe('source-sampling');
    expect(editor.results).toMatchObject({ state: 'idle', stale: false, sampling: 0 });
    const shares = new Set<number | null>();
    editor.subscribe('results', () => void shares.add(editor.results.sampling));
    sampler.work();
    expect(shares.size).toBeGreaterThan(4);
    expect(editor.results.assessment).toBe(quick);
    engine.work();
    expect(editor.results).toMatchObject({ state: 'idle', stale: false, sampling: null });
    expect(editor.results.assessment!.fitted.method).toBe('source-sampling');
    settle();
    expect([sampler.count('sample'), engine.count('assess')]).toEqual([1, 2]);
  });

  it('what leaves the survey alone is answered with the samples there are', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    sampler.work();
    engine.work();
    editor.run(change({ kind: 'piece', id: 'p1' }, { at: [2.5, 2.5] }));
    settle();
    expect(editor.results.assessment!.fitted.method).toBe('source-sampling');
    editor.run(setSettings({ method: 'kriging' }));
    settle();
    expect(editor.results.assessment!.fitted.method).toBe('kriging');
    editor.run(setSettings(sampling));
    settle();
    expect(editor.results.assessment!.fitted.method).toBe('source-sampling');
    expect(sampler.count('sample')).toBe(1);
  });

  it('a piece that moves while sampling goes on is in the map that comes of it', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    editor.run(change({ kind: 'piece', id: 'p1' }, { at: [4, 2.5] }));
    settle();
    const before = editor.results.assessment!.pieces[0]!.mean;
    sampler.work();
    engine.work();
    const { assessment, request } = editor.results;
    expect(assessment!.fitted.method).toBe('source-sampling');
    expect(request!.pieces[0]!.uses[0]!.zone.cells[0]![0]).toBeGreaterThan(3);
    expect(assessment!.pieces[0]!.mean / before).toBeCloseTo(1, 0);
    expect(sampler.count('sample')).toBe(1);
  });

  it('another reading ends the sampling under way and starts one of its own', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 0.5 }));
    settle();
    expect(sampler.ended).toBe(1);
    sampler.work();
    engine.work();
    expect(editor.results.assessment!.fitted.method).toBe('source-sampling');
    expect(editor.results.assessment!.fitted.places[0]!.ln).toBeCloseTo(Math.log(0.5), 9);
  });

  it('goes on from the samples there are after one reading, and begins afresh for the report', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    const starts = () =>
      sampler.asks.flatMap((ask) => (ask.ask === 'sample' ? [ask.start !== undefined] : []));
    editor.run(setSettings(sampling));
    settle();
    sampler.work();
    engine.work();
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 0.5 }));
    settle();
    // No other method's map shows in between.
    expect(editor.results).toMatchObject({ state: 'running', stale: true, sampling: null });
    expect(editor.results.assessment!.fitted.method).toBe('source-sampling');
    expect(engine.count('assess')).toBe(2);
    sampler.work();
    engine.work();
    expect(editor.results).toMatchObject({ state: 'idle', stale: false });
    expect([starts(), engine.count('assess')]).toEqual([[false, true], 3]);
    const warm = editor.results.assessment!;
    editor.setStage('report');
    settle();
    expect(editor.results).toMatchObject({ state: 'idle', sampling: 0, assessment: warm });
    sampler.work();
    engine.work();
    expect(starts()).toEqual([false, true, false]);
    const fresh = editor.results.assessment!;
    expect(fresh.rooms[0]!.median).not.toBe(warm.rooms[0]!.median);
    editor.setStage('map');
    settle();
    expect(editor.results).toMatchObject({ sampling: null, assessment: fresh });
  });

  it('can be stopped, and then this survey is left alone until it changes', async () => {
    const { editor, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    editor.stopSampling();
    expect([editor.results.sampling, sampler.ended]).toEqual([null, 1]);
    editor.run(change({ kind: 'piece', id: 'p1' }, { at: [4, 2.5] }));
    settle();
    expect(editor.results.sampling).toBeNull();
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 0.5 }));
    settle();
    expect(editor.results.sampling).toBe(0);
  });

  it('fault: stopped while it went on from earlier samples, the map was never drawn', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    sampler.work();
    engine.work();
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 0.5 }));
    settle();
    editor.stopSampling();
    engine.work();
    expect(editor.results).toMatchObject({ state: 'idle', stale: false, sampling: null });
    expect(editor.results.assessment!.fitted.method).not.toBe('source-sampling');
  });

  it('fault: stopped while its map was being drawn, the sampling went on', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    sampler.work();
    expect(editor.results.sampling).toBeGreaterThan(0.7);
    editor.stopSampling();
    engine.work();
    expect(editor.results).toMatchObject({ state: 'idle', stale: false, sampling: null });
    expect(editor.results.assessment!.fitted.method).not.toBe('source-sampling');
    editor.run(change({ kind: 'piece', id: 'p1' }, { at: [4, 2.5] }));
    settle();
    expect(editor.results.assessment!.fitted.method).not.toBe('source-sampling');
    editor.startSampling();
    engine.work();
    expect(editor.results.assessment!.fitted.method).toBe('source-sampling');
    expect(sampler.count('sample')).toBe(1);
  });

  it('fault: what was undone had another map than before', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    const all = () => {
      settle();
      sampler.work();
      engine.work();
    };
    editor.run(setSettings(sampling));
    all();
    const { rooms } = editor.results.assessment!;
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 0.9 }));
    all();
    editor.undo();
    all();
    expect(editor.results.assessment!.rooms).toEqual(rooms);
    expect(sampler.count('sample')).toBe(2);
  });

  it('what was stopped can be sampled after all', async () => {
    const { editor, engine, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings(sampling));
    settle();
    editor.stopSampling();
    editor.startSampling();
    expect(editor.results.sampling).toBe(0);
    sampler.work();
    engine.work();
    expect(editor.results.assessment!.fitted.method).toBe('source-sampling');
  });

  it('a method that was asked for asks for no samples', async () => {
    const { editor, sampler, settle } = await drive({ home: bedroom() });
    editor.run(setSettings({ method: 'kriging' }));
    settle();
    expect([editor.results.sampling, sampler.count('sample')]).toEqual([null, 0]);
  });
});
