import { describe, expect, it } from 'vitest';
import { observe } from '../../../src/engine/mapping/observations';
import { addMeter, addReading } from '../../../src/home/edits/add';
import { surveyOf } from '../../../src/home/questions/surveyOf';
import { ReadingDraft } from '../../../src/views/panels/survey/readingDraft.svelte';
import { survey } from '../../../src/words/survey';
import type { Home } from '../../../src/home/home';
import type { EditorState } from '../../../src/views/editorState.svelte';
import { draftOf } from '../../../src/views/panels/survey/draftOf';
import { homeWith } from '../../support/homes';

const draftIn = (home: Home) => new ReadingDraft(() => home);
const where = { level: 'l1', round: 'a', time: '2026-03-02T10:00' };

describe('a reading of 0', () => {
  it('is kept as below the range of the meter, never as a number', () => {
    for (const [meter, least] of [
      [[], 0.01],
      [[addMeter({ name: 'Fine', range: [0.02, 20], resolution: 0.001 })], 0.02],
      [[addMeter({ name: 'From nothing', range: [0, 20], resolution: 0.001 })], 0.001],
      [[addMeter({ name: 'Coarse', range: [0.001, 20], resolution: 0.01 })], 0.01],
    ] as const)
      for (const typed of ['0', '0,00', '0 mG']) {
        const draft = draftIn(homeWith(...meter));
        draft.entries.value = typed;
        expect(draft.finish([1, 1], where)).toMatchObject({
          ok: true,
          fields: { value: least, limit: 'below' },
        });
      }
  });

  it('in a file, the map takes it as under what the meter can show', () => {
    const home = homeWith(
      addMeter({ name: 'From nothing', range: [0, 20], resolution: 0.01 }),
      addReading({ level: 'l1', at: [1, 1], value: 0 }),
    );
    expect(observe(surveyOf(home, 'a', 'auto').readings)[0]).toMatchObject({
      ln: Math.log(0.005),
      limited: 'below',
    });
  });
});

describe('a limit without a value', () => {
  it('takes the end of the range, with a meter that nobody described too', () => {
    const draft = draftIn(homeWith());
    draft.limit = 'above';
    expect(draft.finish([1, 1], where)).toMatchObject({ ok: true, fields: { value: 200, limit: 'above' } });
  });

  it('is lowest where the meter is described', () => {
    const draft = draftIn(homeWith(addMeter({ name: 'Fine', range: [0.02, 20], resolution: 0.001 })));
    draft.beyond('below');
    expect(draft.finish([1, 1], where)).toMatchObject({
      ok: true,
      fields: { value: 0.02, limit: 'below', text: '' },
    });
  });

  it('does not make a value of what is not one', () => {
    const draft = draftIn(homeWith());
    draft.beyond('below');
    draft.entries.value = 'abc';
    expect(draft.finish([1, 1], where).ok).toBe(false);
  });
});

it('“below range” holds while a figure is typed, and goes when it is pressed again', () => {
  const draft = draftIn(homeWith());
  draft.beyond('below');
  for (const key of ['.', '0', '2']) draft.press(key);
  expect(draft.finish([1, 1], where)).toMatchObject({
    ok: true,
    fields: { value: 0.02, limit: 'below', text: '< 0.02 µT' },
  });
  draft.beyond('below');
  expect(draft.finish([1, 1], where)).toMatchObject({ ok: true, fields: { limit: null, text: '0.02 µT' } });
});

it('lowest and highest without a value: says that the value is needed too', () => {
  const draft = draftIn(homeWith());
  draft.ask('range');
  draft.entries.low = '0.1';
  draft.entries.high = '0.3';
  expect(draft.finish([1, 1], where)).toEqual({ ok: false, sentence: survey.valueToo });
});

describe('the unit of the pad', () => {
  it('is the one chosen, until the meter shows another', () => {
    let home = homeWith(addMeter({ name: 'One', unit: 'mG' }));
    const draft = new ReadingDraft(() => home);
    expect(draft.unit).toBe('mG');
    draft.unit = 'nT';
    expect(draft.unit).toBe('nT');
    home = homeWith(addMeter({ name: 'Two', unit: 'uT' }));
    expect(draft.unit).toBe('uT');
  });
});

describe('the reading that is being typed', () => {
  const bridge = () => {
    const desk = { home: homeWith(), shelf: { current: 'first' } };
    return { desk, state: desk as unknown as EditorState };
  };

  it('is the same after a turn of the phone or a look at another stage', () => {
    const { state } = bridge();
    draftOf(state).entries.value = '0.14';
    expect(draftOf(state).entries.value).toBe('0.14');
  });

  it('is another in another home, in that home’s unit', () => {
    const { desk, state } = bridge();
    draftOf(state).entries.value = '0.14';
    desk.shelf.current = 'second';
    desk.home = homeWith(addMeter({ name: 'One', unit: 'nT' }));
    expect(draftOf(state).entries.value).toBe('');
    expect(draftOf(state).unit).toBe('nT');
  });
});

describe('fault: a reading was kept while its place or height was refused in words', () => {
  it.each(['across', 'up', 'height'] as const)('%s', (field) => {
    const draft = draftIn(homeWith());
    draft.entries.value = '0.3';
    draft.trouble(field, 'No length can be read in it.');
    expect(draft.finish([1, 1], where)).toEqual({ ok: false, sentence: 'No length can be read in it.' });
    draft.trouble(field, '');
    expect(draft.finish([1, 1], where).ok).toBe(true);
  });
});
