import { describe, expect, it } from 'vitest';
import { RULE_DEFAULTS } from '../../src/engine/arranging/ruleSettings';
import { change } from '../../src/home/edits/change';
import { setSettings } from '../../src/home/edits/setSettings';
import { tryEdit } from '../../src/editor/store';
import type { Edit } from '../../src/home/edits/edit';
import { askedSentences } from '../../src/words/arrangementReport';
import { bedroom } from '../support/homes';

const PLAIN = { cautious: false, aim: 'mean' } as const;
const after = (edit: Edit) => {
  const tried = tryEdit(bedroom(), edit);
  if ('problem' in tried) throw new Error(tried.problem.kind);
  return tried.change.home;
};

describe('what the report says of how places were looked for', () => {
  it('is nothing where all is as by default', () => {
    expect(askedSentences(bedroom(), PLAIN)).toEqual([]);
  });

  it('is the wish, and every rule that was changed or given up', () => {
    expect(askedSentences(bedroom(), { cautious: true, aim: 'mean' })).toEqual([
      'Planned on the upper end of the interval (cautious).',
    ]);
    const rules = { ...RULE_DEFAULTS, landing: 0.3, path: 0.5 };
    expect(askedSentences(after(setSettings({ rules })), PLAIN)).toEqual([
      'Rules that are not as this tool has them: before a door or gap, both sides: 0.30 m instead of 0.60 m and width of the way: 0.50 m instead of 0.60 m.',
    ]);
  });

  it('names strips that are narrower than usual, not those that are wider', () => {
    const strips = (left: number) =>
      after(change({ kind: 'piece', id: 'p1' }, { access: { left, right: 0, foot: 0.75 } }));
    expect(askedSentences(strips(0.45), PLAIN)).toEqual([
      'Rules that are not as this tool has them: free floor beside bed A: 0.45 m at the left, 0.75 m at the foot.',
    ]);
    expect(askedSentences(strips(0.9), PLAIN)).toEqual([]);
  });
});
