import { describe, expect, it } from 'vitest';
import { typedDate, typedLength, typedNone, typedNumber } from '../../../src/views/controls/typed';
import { localTime } from '../../../src/views/panels/survey/localTime';

describe('typed entries', () => {
  it('take a comma or a point, and keep to their bounds', () => {
    const hours = typedNumber(0, 24);
    expect(hours('7,5')).toEqual({ ok: true, value: 7.5 });
    expect(hours('−1')).toMatchObject({ ok: false });
    expect(hours('25')).toMatchObject({ ok: false, sentence: expect.stringContaining('from 0 to 24') });
    expect(hours('eight')).toMatchObject({ ok: false, sentence: expect.stringContaining('“eight”') });
    expect(hours('')).toMatchObject({ ok: false });
  });

  it('take nothing for none where there may be none', () => {
    expect(typedNone(typedLength('m'))('  ')).toEqual({ ok: true, value: null });
    expect(typedNone(typedLength('m'))('4,2')).toEqual({ ok: true, value: 4.2 });
  });

  it('take days that exist', () => {
    expect(typedDate('2026-03-02')).toEqual({ ok: true, value: '2026-03-02' });
    expect(typedDate('')).toEqual({ ok: true, value: null });
    expect(typedDate('2026-02-30')).toMatchObject({ ok: false });
    expect(typedDate('2 March')).toMatchObject({ ok: false });
  });
});

describe('the time of a reading', () => {
  it('names the same moment, by the clock on the wall', () => {
    const at = new Date('2026-03-02T18:40:07Z');
    const text = localTime(at);
    expect(text).toMatch(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}[+-]\d{2}:\d{2}$/);
    expect(new Date(text).getTime()).toBe(at.getTime());
  });
});
