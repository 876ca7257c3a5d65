import { describe, expect, it } from 'vitest';
import { addReading } from '../../src/home/edits/add';
import { appliance, suspect } from '../support/suspects';
import { box, homeWith, room } from '../support/homes';
import { conductorField } from '../../src/engine/magnetics/conductor';
import { drive } from '../support/driver';
import { markSuspect } from '../../src/home/edits/markSuspect';
import { random } from '../../src/engine/algebra/random';
import { resultant } from '../../src/engine/magnetics/phasor';
import { setSettings } from '../../src/home/edits/setSettings';
import { suspectAt } from '../../src/editor/suspects';

/** A room with a current of 2 A along its left wall, read at twelve places. */
function wired() {
  const wire = {
    from: [0, 0, 0.1] as const,
    to: [0, 4, 0.1] as const,
    amperes: 2,
    degrees: 0,
    endless: false,
  };
  const chance = random(12);
  const readings = Array.from({ length: 12 }, (_, i) => {
    const at: [number, number] = [
      0.5 + (i % 4) + 0.4 * chance.next(),
      0.5 + Math.floor(i / 4) + chance.next(),
    ];
    const value = Math.hypot(0.01, resultant(conductorField([wire], [...at, 1])));
    return addReading({ level: 'l1', at, value: Number(value.toFixed(3)) });
  });
  return homeWith(room(box(0, 0, 5, 4)), ...readings);
}

describe('likely unmarked sources on the sheet', () => {
  it('answer within reach, the nearest first', () => {
    const [line, point] = [suspect(), appliance(2, 1)];
    const all = [line, point];
    expect(suspectAt(all, [3.9, 1], 0.2)).toBe(line);
    expect(suspectAt(all, [2.1, 1.1], 0.2)).toBe(point);
    expect(suspectAt(all, [3, 1], 0.2)).toBeNull();
    expect(suspectAt(all, [2.9, 1], 2)).toBe(point);
  });

  it('are looked at by a tap, while nothing else is selected, and marked in one step that can be undone', async () => {
    const { editor, engine, sampler, click, settle } = await drive({ home: wired() });
    editor.run(setSettings({ method: 'source-sampling' }));
    editor.setStage('map');
    settle();
    sampler.work();
    engine.work();
    const [found] = editor.results.assessment!.evidence.unmarked!;
    const [a, b] = found!.path;
    const middle: [number, number] = [(a![0] + b![0]) / 2, (a![1] + b![1]) / 2];
    expect(Math.abs(middle[0])).toBeLessThan(0.5);
    click([2.5, 2]);
    expect(editor.selection).toEqual([{ kind: 'room', id: 'r1' }]);
    click(middle);
    expect(editor.suspect).toBe(found);
    expect(editor.selection).toEqual([]);
    click([2.5, 2]);
    expect(editor.suspect).toBeNull();

    editor.run(markSuspect(found!, 'Suspected current'));
    click(middle);
    expect(editor.suspect).toBeNull();
    expect(editor.selection).toEqual([{ kind: 'source', id: 's1' }]);
    editor.undo();
    expect(editor.home.sources).toEqual({});
    click(middle);
    expect(editor.suspect).toBe(found);
    editor.setStage('judge');
    click([2.5, 2]);
    click(middle);
    expect(editor.suspect).toBeNull();
  }, 30_000);
});
