import { describe, expect, it } from 'vitest';
import { oddsSentence } from '../../src/words/basis';

describe('how surely a dose is lower', () => {
  it('fault: odds lay far under what the intervals beside them suggest, and nothing said why', () => {
    expect(oddsSentence(7.31)).toContain('multiplied by 7.3');
    expect(oddsSentence(7.31)).toContain('not in the intervals');
  });

  it('says nothing of a widening that is none', () => {
    expect(oddsSentence(0.8)).not.toContain('multiplied');
    expect(oddsSentence(1.04)).not.toContain('multiplied');
  });
});
