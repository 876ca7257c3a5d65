import { describe, expect, it } from 'vitest';
import { appliance, suspect } from '../support/suspects';
import { homeWith } from '../support/homes';
import { markSuspect } from '../../src/home/edits/markSuspect';
import { samplingQuestion } from '../../src/engine/mapping/sourceSampling/question';
import { stillUnmarked } from '../../src/home/questions/stillUnmarked';
import { tryEdit } from '../../src/editor/store';

const rising = suspect({ kind: 'point', path: [[4, 1]], height: 1.2 });

describe('a likely unmarked source that is marked', () => {
  it('is a source with the place, height and fall-off of what it would be', () => {
    const home = homeWith(markSuspect(suspect(), 'Suspected current'), markSuspect(appliance(1, 2), ''));
    expect(Object.values(home.sources)).toEqual([
      {
        id: 's1',
        kind: 'line',
        name: 'Suspected current',
        level: 'l1',
        path: [
          [4, 0],
          [4, 3],
        ],
        height: 0.05,
        falloff: 1,
        origin: 'house',
      },
      {
        id: 's2',
        kind: 'point',
        name: '',
        level: 'l1',
        path: [[1, 2]],
        height: 0.9,
        falloff: 3,
        origin: 'house',
      },
    ]);
    const street = homeWith(markSuspect(suspect({ origin: 'outside' }), '')).sources.s1;
    expect(street).toMatchObject({ falloff: 'fit', origin: 'outside' });
  });

  it('is one change, taken back by its inverse', () => {
    const home = homeWith();
    const tried = tryEdit(home, markSuspect(suspect(), 'Suspected current'));
    if ('problem' in tried) throw new Error(tried.problem.kind);
    expect(Object.keys(tried.change.home.sources)).toEqual(['s1']);
    expect(tried.change.inverse.length).toBeGreaterThan(0);
  });

  it('is no longer among the unmarked, before anything is worked out anew', () => {
    const all = [suspect(), appliance(1, 2), rising];
    const home = homeWith(markSuspect(all[0]!, ''));
    expect(stillUnmarked(homeWith(), all)).toEqual(all);
    expect(stillUnmarked(home, all)).toEqual(all.slice(1));
  });

  it('that rises is asked for as a current that rises, an appliance as an appliance', () => {
    const home = homeWith(
      markSuspect(rising, ''),
      markSuspect(appliance(1, 2), ''),
      markSuspect(suspect(), ''),
    );
    const survey = {
      readings: [],
      sources: Object.values(home.sources),
      elevations: { l1: 0 },
      walls: [],
      method: 'source-sampling' as const,
    };
    const { marked } = samplingQuestion(survey, {
      seed: 1,
      effort: { chains: 1, burn: 1, keep: 1, samples: 1 },
    });
    expect(marked.map(({ kind }) => kind)).toEqual(['rise', 'point', 'line']);
  });
});
