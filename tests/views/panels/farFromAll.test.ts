import { describe, expect, it } from 'vitest';
import { farFromAll } from '../../../src/views/panels/survey/farFromAll';
import { doubtText } from '../../../src/words/survey';

const READ = [0.05, 0.2, 0.9];

describe('a value far from everything read here', () => {
  it('782 µT in hatched ground is asked about, and its unit is guessed', () => {
    const doubt = farFromAll(782, 'uT', READ, 2000);
    expect(doubt).toEqual({ kind: 'far-from-all', unit: 'nT' });
    expect(doubtText(doubt!, 782, 'uT')).toBe('Far from everything read here: 782 µT. Was that nT?');
  });

  it('is asked about beyond the meter’s range too, in an empty home as well', () => {
    expect(farFromAll(782, 'uT', READ, 200)).toEqual({ kind: 'beyond-meter', most: 200, unit: 'nT' });
    expect(farFromAll(782, 'uT', [], 200)).toEqual({ kind: 'beyond-meter', most: 200, unit: null });
  });

  it('a hundred times as much as anything is kept, a little more is asked about; as little as that likewise', () => {
    expect(farFromAll(90, 'uT', READ, 200)).toBeNull();
    expect(farFromAll(91, 'uT', READ, 200)).not.toBeNull();
    expect(farFromAll(0.0005, 'uT', READ, 200)).toBeNull();
    expect(farFromAll(0.0004, 'uT', READ, 200)).not.toBeNull();
  });

  it('says nothing of a 0, nor where there is nothing to compare with', () => {
    expect(farFromAll(0, 'uT', READ, 200)).toBeNull();
    expect(farFromAll(50, 'uT', [], 200)).toBeNull();
    expect(farFromAll(50, 'uT', [0], 200)).toBeNull();
  });
});
