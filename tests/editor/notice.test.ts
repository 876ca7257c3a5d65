import { expect, it } from 'vitest';
import { change } from '../../src/home/edits/change';
import { setTitle } from '../../src/home/edits/setTitle';
import { problemText } from '../../src/words/problems';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

it('fault: the notice of a refusal stood on after the next edit', async () => {
  const { editor } = await drive({ home: bedroom() });
  editor.run(change({ kind: 'reading', id: 'm999' }, { value: 1 }));
  expect(editor.notice?.tone).toBe('problem');
  editor.run(setTitle('Done otherwise'));
  expect(editor.notice).toBeNull();
});

it('fault: an outline without corners had walls 0 to −1', () => {
  const text = problemText({ kind: 'no-such-wall', path: ['openings', 'o1', 'wall'], wall: 0, walls: 0 });
  expect(text).toContain('no walls yet');
});
