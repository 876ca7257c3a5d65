import { describe, expect, it } from 'vitest';
import { parseHome } from '../../src/home/file/parse';
import { falloffText, shareSentence, shareText, silentSentences } from '../../src/words/sources';

const parsed = parseHome(
  JSON.stringify({
    format: 'stillroom-home',
    version: 1,
    title: 'Test',
    levels: [{ id: 'l1' }],
    rooms: [
      {
        id: 'r1',
        level: 'l1',
        name: 'Hall',
        outline: [
          [0, 0],
          [4, 0],
          [4, 3],
          [0, 3],
        ],
      },
    ],
    sources: [
      { id: 's1', kind: 'point', name: 'Freezer', level: 'l1', path: [[1, 1]] },
      {
        id: 's2',
        kind: 'line',
        level: 'l1',
        path: [
          [-9, -5],
          [9, -5],
        ],
      },
      { id: 's3', kind: 'point', level: 'l1', path: [[8, 8]] },
    ],
  }),
);
if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
const { home } = parsed;

const share = (id: string, silent: boolean, of: [number, number] = [0.4, 0.7]) => ({
  id,
  falloff: 2 as const,
  fitted: true,
  share: of,
  silent,
});

describe('shares in words', () => {
  it.each([
    [[0.4, 0.7], '40–70\u2009%'],
    [[0, 0.03], '0–3\u2009%'],
    [[0.9, 1], '90–100\u2009%'],
    [[0, 0.001], '<\u20091\u2009%'],
    [[0.5, 0.501], '50\u2009%'],
  ] as const)('%j is %s', ([low, high], text) => expect(shareText([low, high])).toBe(text));

  it('say the fall-off, who chose it, and of what the share is', () => {
    expect(falloffText({ falloff: 3, fitted: false })).toBe('falls as 1/r³, as given');
    expect(shareSentence(home, share('s1', false))).toBe(
      'Freezer: falls as 1/r², by the readings; 40–70\u2009% of B² at the readings.',
    );
  });
});

describe('marks that explain nothing', () => {
  it('are named with their room and a question', () => {
    expect(silentSentences(home, [share('s1', true), share('s2', true), share('s3', true)])).toEqual([
      'Freezer, marked in: Hall, explains nothing of these readings. Was it on, and is it marked where it stands?',
      'Source 2 explains nothing of these readings. Does it run where it is marked, and did it carry a current?',
      'Source 3 explains nothing of these readings. Was it on, and is it marked where it stands?',
    ]);
  });

  it('are not spoken of where they explain something, or are gone', () => {
    expect(silentSentences(home, [share('s1', false), share('s9', true)])).toEqual([]);
  });
});
