import { describe, expect, it } from 'vitest';
import { observe } from '../../../src/engine/mapping/observations';
import { addMeter, addReading } from '../../../src/home/edits/add';
import { surveyOf } from '../../../src/home/questions/surveyOf';
import { ReadingDraft } from '../../../src/views/panels/survey/readingDraft.svelte';
import { homeWith } from '../../support/homes';

const where = { level: 'l1', round: 'a', time: '2026-03-02T10:00' };

describe('a reading of 0', () => {
  it('is kept as below the range of the meter, never as a number', () => {
    const home = homeWith(addMeter({ name: 'Fine', range: [0.02, 20], resolution: 0.001 }));
    for (const [meter, least] of [
      [null, 0.01],
      [home.meters.g1!, 0.02],
      [{ ...home.meters.g1!, range: [0, 20] as [number, number] }, 0.001],
    ] as const)
      for (const typed of ['0', '0,00', '0 mG']) {
        const draft = new ReadingDraft('uT');
        draft.entries.value = typed;
        const finished = draft.finish(home, [1, 1], where, meter);
        expect(finished).toMatchObject({ ok: true, fields: { value: least, limit: 'below' } });
      }
  });

  it('in a file, the map takes it as under what the meter can show', () => {
    const home = homeWith(
      addMeter({ name: 'From nothing', range: [0, 20], resolution: 0.01 }),
      addReading({ level: 'l1', at: [1, 1], value: 0 }),
    );
    expect(observe(surveyOf(home, 'a', 'auto').readings)[0]).toMatchObject({
      ln: Math.log(0.01) - 1,
      variance: 1,
    });
  });
});

describe('a limit without a value', () => {
  it('takes the end of the range, with a meter that nobody described too', () => {
    const draft = new ReadingDraft('uT');
    draft.limit = 'above';
    expect(draft.finish(homeWith(), [1, 1], where, null)).toMatchObject({
      ok: true,
      fields: { value: 200, limit: 'above' },
    });
  });
});
