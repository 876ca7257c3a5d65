import { describe, expect, it } from 'vitest';
import { choose, sourcesExplain } from '../../../src/engine/mapping/choose';

const compared = (kriging: number | null, inverse: number | null) => [
  { method: 'kriging' as const, looRmseLn: kriging },
  { method: 'inverse-distance' as const, looRmseLn: inverse },
];

describe('choose', () => {
  it('takes the least error, kriging where they are equal', () => {
    expect(choose('auto', compared(0.2, 0.3))).toEqual({
      method: 'kriging',
      why: { kind: 'least-error', of: 2 },
    });
    expect(choose('auto', compared(0.3, 0.2))).toEqual({
      method: 'inverse-distance',
      why: { kind: 'least-error', of: 2 },
    });
    expect(choose('auto', compared(0.2, 0.2)).method).toBe('kriging');
  });

  it('leaves kriging for inverse distance where that errs clearly less, and says where it does not', () => {
    expect(choose('auto', compared(0.2, 0.19))).toEqual({
      method: 'kriging',
      why: { kind: 'unclear', other: 'inverse-distance' },
    });
  });

  const samples = (looRmseLn: number) => ({ method: 'source-sampling' as const, looRmseLn });
  const sources = (looRmseLn: number) => ({ method: 'source-kriging' as const, looRmseLn });

  it('takes source sampling where it errs about as little as the methods that know no source', () => {
    const chosen = (error: number) => choose('auto', [...compared(0.2, 0.3), samples(error)]);
    expect(chosen(0.1)).toEqual({ method: 'source-sampling', why: { kind: 'least-error', of: 3 } });
    expect(chosen(0.208)).toEqual({ method: 'source-sampling', why: { kind: 'samples-hold' } });
    expect(chosen(0.212)).toEqual({ method: 'kriging', why: { kind: 'least-error', of: 3 } });
    expect(choose('kriging', [...compared(0.2, 0.3), samples(0.1)]).why).toEqual({ kind: 'asked' });
  });

  it('takes source sampling with marks where it errs clearly less than the methods that know none', () => {
    const chosen = (sampled: number, marked: number) =>
      choose('auto', [...compared(0.2, 0.3), sources(marked), samples(sampled)]);
    expect(chosen(0.18, 0.19).method).toBe('source-sampling');
    expect(chosen(0.18, 0.17)).toEqual({ method: 'source-sampling', why: { kind: 'samples-hold' } });
    expect(chosen(0.195, 0.25)).toEqual({
      method: 'kriging',
      why: { kind: 'unclear', other: 'source-sampling' },
    });
    expect(chosen(0.195, 0.15).method).toBe('source-kriging');
  });

  it('does as it is asked', () => {
    expect(choose('inverse-distance', compared(0.2, 0.3))).toEqual({
      method: 'inverse-distance',
      why: { kind: 'asked' },
    });
  });

  it('answers a method that was not worked out with the automatic choice, and says so', () => {
    expect(choose('source-sampling', compared(0.3, 0.2))).toEqual({
      method: 'inverse-distance',
      why: { kind: 'least-error', of: 2 },
      notYet: 'source-sampling',
    });
  });

  it('says where nothing could be compared', () => {
    expect(choose('auto', compared(null, null))).toEqual({
      method: 'kriging',
      why: { kind: 'not-compared' },
    });
  });

  it('takes source kriging where it errs clearly less, and says where it errs less but not clearly', () => {
    const withSources = (error: number) => [...compared(0.2, 0.3), sources(error)];
    expect(choose('auto', withSources(0.15))).toEqual({
      method: 'source-kriging',
      why: { kind: 'least-error', of: 3 },
    });
    expect(choose('auto', withSources(0.195))).toEqual({
      method: 'kriging',
      why: { kind: 'unclear', other: 'source-kriging' },
    });
    expect(choose('auto', withSources(0.25)).why).toEqual({ kind: 'least-error', of: 3 });
    expect(choose('source-kriging', withSources(0.25))).toEqual({
      method: 'source-kriging',
      why: { kind: 'asked' },
    });
    expect([0.15, 0.195].map((error) => sourcesExplain(withSources(error)))).toEqual([true, false]);
    expect(sourcesExplain(compared(0.2, 0.3))).toBe(false);
  });
});
