import { describe, expect, it } from 'vitest';
import { serialiseHome } from '../../../src/home/file/serialise';
import { openDropped } from '../../../src/views/panels/openDropped';
import { drive } from '../../support/driver';
import { bedroom } from '../../support/homes';

describe('fault: a file dropped on the page took its place', () => {
  it('a home file is opened, also one that is not sound in words', async () => {
    const { editor } = await drive();
    await openDropped(editor, new File([serialiseHome(bedroom())], 'made-up.home.json'));
    expect(editor.home.title).toBe('Made up');
    await openDropped(editor, new File(['{"a":'], 'cut.json'));
    expect(editor.notice?.text).toMatchObject({ kind: 'file-bad', fileName: 'cut.json' });
    expect(editor.home.title).toBe('Made up');
  });

  it.each(['notes.txt', 'plan.pdf'])('%s is refused, and the home stays', async (name) => {
    const { editor } = await drive({ home: bedroom() });
    const before = editor.home;
    await openDropped(editor, new File(['text'], name));
    expect(editor.notice?.text).toEqual({ kind: 'file-not-taken', fileName: name });
    expect(editor.home).toBe(before);
  });
});
