import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { createDatabase } from '../../src/editor/storage/database';
import { fileName } from '../../src/editor/storage/fileName';
import { addReading, addRecording } from '../../src/home/edits/add';
import { change } from '../../src/home/edits/change';
import { remove } from '../../src/home/edits/remove';
import { setTitle } from '../../src/home/edits/setTitle';
import { serialiseHome } from '../../src/home/file/serialise';
import { newHome } from '../../src/home/newHome';
import { bedroom } from '../support/homes';
import { createTestDatabase, createTestLocks, drive } from '../support/driver';

const PICTURE = 'data:image/gif;base64,R0lGODlhAQABAIAAAP///wAAACwAAAAAAQABAAACAkQBADs=';
const backdrop = { image: PICTURE, at: [0, 0], metresPerPixel: 0.01, angle: 0, opacity: 0.5 };
const saves = ({ log }: { log: string[] }) => log.filter((each) => each === 'save').length;

let databases = 0;
const fresh = () => createDatabase(`test-${(databases += 1)}`);

describe('autosave', () => {
  it('never writes before the kept home is loaded, nor where nothing has changed', async () => {
    const database = createTestDatabase();
    const { editor, clock } = await drive({ database });
    clock.pass(10_000);
    await editor.shelf.flush();
    expect(database.log).toEqual(['list']);
    editor.run(setTitle('Larch Cottage'));
    await editor.shelf.flush();
    expect(database.log).toEqual(['list', 'save']);
  });

  it('begins at once with the first edit, so that a page closed the next moment has kept it', async () => {
    const { editor, clock, database } = await drive({ home: bedroom() });
    clock.pass(1000);
    const before = saves(database);
    editor.run(setTitle('Reloaded at once'));
    await new Promise((done) => setTimeout(done));
    expect(saves(database)).toBe(before + 1);
    expect([...database.homes.values()][0]!.title).toBe('Reloaded at once');
  });

  it('gathers the edits that follow, writes them once, and tells when', async () => {
    const { editor, clock, database } = await drive({ home: bedroom() });
    clock.pass(1000);
    const before = saves(database);
    for (const title of ['L', 'La', 'Lar']) {
      editor.run(setTitle(title));
      await new Promise((done) => setTimeout(done));
    }
    expect(saves(database)).toBe(before + 1);
    clock.pass(500);
    await editor.shelf.flush();
    expect(saves(database)).toBe(before + 2);
    clock.pass(5000);
    expect(saves(database)).toBe(before + 2);
    expect(editor.shelf.saving).toEqual({ state: 'saved', at: expect.any(Number), problem: null });
    expect(editor.shelf.homes.map(({ title }) => title)).toEqual(['Lar']);
  });

  it('writes at once when the page is hidden', async () => {
    const { editor, database } = await drive({ home: bedroom() });
    editor.run(setTitle('Gone in a second'));
    await editor.shelf.flush();
    expect([...database.homes.values()][0]!.title).toBe('Gone in a second');
  });

  it('does not write the steps of a gesture, but its end', async () => {
    const { editor, clock, drag, lift, database } = await drive({ home: bedroom() });
    const before = saves(database);
    drag(
      [
        [1, 3],
        [2, 2],
      ],
      { hold: true },
    );
    clock.pass(5000);
    await editor.shelf.flush();
    expect(saves(database)).toBe(before);
    lift([2, 2]);
    clock.pass(5000);
    await editor.shelf.flush();
    expect(saves(database)).toBe(before + 1);
  });

  it('a full or refused storage is said, the home goes on in memory, and a later save catches up', async () => {
    const { editor, clock, database } = await drive({ home: bedroom() });
    database.refuse = Object.assign(new Error('no room'), { name: 'QuotaExceededError' });
    editor.run(setTitle('Kept in memory'));
    clock.pass(1000);
    await editor.shelf.flush();
    expect(editor.shelf.saving).toMatchObject({ state: 'failed', problem: { kind: 'storage-full' } });
    database.refuse = new Error('denied');
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 1 }));
    await editor.shelf.flush();
    expect(editor.shelf.saving.problem).toEqual({ kind: 'storage-refused', detail: 'denied' });
    expect(editor.home.title).toBe('Kept in memory');
    database.refuse = null;
    await editor.shelf.flush();
    expect(editor.shelf.saving.state).toBe('saved');
    expect([...database.homes.values()][0]!.title).toBe('Kept in memory');
  });

  it('storage that is refused from the first leaves a home to work in', async () => {
    const database = createTestDatabase();
    database.refuse = new Error('private window');
    const { editor, settle } = await drive({ database, home: bedroom() });
    expect(editor.notice?.text).toEqual({ kind: 'storage-refused', detail: 'private window' });
    expect(Object.keys(editor.home.readings).length).toBe(12);
    settle();
    expect(editor.results.assessment).not.toBeNull();
  });
});

describe('the first visit', () => {
  it('lists the sample among the homes at once, and opens it again next time', async () => {
    const database = createTestDatabase();
    const { editor } = await drive({ home: bedroom(), database });
    expect(editor.shelf.homes).toEqual([
      { id: editor.shelf.current, title: 'Made up', savedAt: expect.any(Number) },
    ]);
    const again = await drive({ database });
    expect(again.editor.home).toEqual(editor.home);
  });
});

describe('the kept home', () => {
  it('comes back as it was, with pictures and samples that are kept apart', async () => {
    const database = fresh();
    const first = await drive({ home: bedroom(), services: { database } });
    first.editor.run(change({ collection: 'levels', id: 'l1' }, { backdrop }));
    first.editor.run(
      addRecording({
        name: 'Hall',
        level: 'l1',
        at: [1, 1],
        start: '2026-03-02T19:40:00Z',
        samples: [[0, 0.12]],
      }),
    );
    first.editor.run(addReading({ level: 'l1', at: [1, 1], value: 0.2 }));
    first.editor.run(remove([{ kind: 'reading', id: 'm13' }]));
    await first.editor.shelf.flush();
    const kept = first.editor.home;
    first.editor.destroy();

    const list = await database.list();
    const { record, assets } = (await database.load(list[0]!.id))!;
    expect(record.text).not.toContain(PICTURE);
    expect(assets.map(({ owner }) => owner).sort()).toEqual(['b1', 'l1']);

    const second = await drive({ services: { database } });
    expect(second.editor.home).toEqual(kept);
    expect(second.editor.canUndo).toBe(false);
    // A number that was on paper is never given out again.
    second.editor.run(addReading({ level: 'l1', at: [1, 1], value: 0.2 }));
    expect(Object.keys(second.editor.home.readings)).toContain('m14');
  });

  it('assets are written once, and go with their owner', async () => {
    const { editor, database } = await drive({ home: bedroom() });
    editor.run(change({ collection: 'levels', id: 'l1' }, { backdrop }));
    await editor.shelf.flush();
    expect(database.assets.size).toBe(1);
    database.assets.clear();
    editor.run(setTitle('Again'));
    await editor.shelf.flush();
    expect(database.assets.size).toBe(0);
    editor.run(
      change(
        { collection: 'levels', id: 'l1' },
        { backdrop: { ...backdrop, image: 'data:image/png;base64,iVBORw0KGgo=' } },
      ),
    );
    await editor.shelf.flush();
    expect(database.assets.size).toBe(1);
    editor.run(change({ collection: 'levels', id: 'l1' }, { backdrop: null }));
    await editor.shelf.flush();
    expect(database.assets.size).toBe(0);
  });

  it('one that cannot be read is said, and stays where it is', async () => {
    const database = createTestDatabase();
    const record = { id: 'x', title: 'Old', savedAt: 1, keptThrough: 0, text: '{"format":', lastIds: {} };
    database.homes.set('x', record);
    const { editor } = await drive({ database });
    expect(editor.notice?.text).toMatchObject({ kind: 'file-bad', fileName: 'Old' });
    expect(database.homes.get('x')).toEqual(record);
    editor.run(setTitle('New'));
    await editor.shelf.flush();
    expect(database.homes.get('x')).toEqual(record);
    expect(database.homes.size).toBe(2);
  });
});

describe('several homes', () => {
  it('are begun, listed with the latest first, opened and removed', async () => {
    const { editor, clock } = await drive({ home: bedroom() });
    const { shelf } = editor;
    editor.run(setTitle('First'));
    clock.pass(1000);
    await shelf.begin();
    expect(editor.home).toEqual(newHome());
    expect(editor.canUndo).toBe(false);
    clock.pass(1000);
    editor.run(setTitle('Second'));
    await shelf.flush();
    expect(shelf.homes.map(({ title }) => title)).toEqual(['Second', 'First']);
    await shelf.open(shelf.homes[1]!.id);
    expect(editor.home.title).toBe('First');
    expect(Object.keys(editor.home.readings).length).toBe(12);
    await shelf.remove(shelf.current);
    expect(shelf.homes.map(({ title }) => title)).toEqual(['Second']);
    expect(editor.home.title).toBe('Second');
  });

  it('a file is opened as a home of its own; a bad one changes nothing', async () => {
    const { editor } = await drive({ home: bedroom() });
    const before = editor.home;
    const problem = await editor.shelf.read('{"format": "other"}', 'plan.json');
    expect(problem).toMatchObject({ kind: 'file-bad', fileName: 'plan.json' });
    expect(editor.home).toBe(before);
    const other = { ...bedroom(), title: 'From a file' };
    expect(await editor.shelf.read(serialiseHome(other), 'plan.json')).toBeNull();
    expect(editor.home).toEqual(other);
    expect(editor.shelf.unkept).toBe(0);
  });

  it('the map of one home never shows in another', async () => {
    const { editor, settle, clock, engine } = await drive({ home: bedroom() });
    settle();
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 1 }));
    clock.pass(1000);
    await editor.shelf.begin();
    expect(editor.results.assessment).toBeNull();
    engine.work();
    expect(editor.results.assessment).toBeNull();
  });
});

describe('files', () => {
  it('are named by the title', () => {
    expect(fileName('Larch Cottage')).toBe('larch-cottage.home.json');
    expect(fileName('  Höhe 3/4: “Süd”  ')).toBe('hohe-3-4-sud.home.json');
    expect(fileName('???')).toBe('home.home.json');
  });

  it('readings since the last file are counted until one is kept', async () => {
    const { editor } = await drive({ home: bedroom() });
    expect(editor.shelf.unkept).toBe(0);
    editor.run(addReading({ level: 'l1', at: [1, 1], value: 0.2 }));
    editor.run(addReading({ level: 'l1', at: [2, 1], value: 0.2 }));
    expect(editor.shelf.unkept).toBe(2);
    editor.undo();
    expect(editor.shelf.unkept).toBe(1);
    const { text, fileName: name } = editor.shelf.write();
    expect(text).toBe(serialiseHome(editor.home));
    expect(name).toBe('made-up.home.json');
    expect(editor.shelf.unkept).toBe(0);
  });
});

describe('two tabs', () => {
  it('the second may only read, says so, and may take over; the first then stops writing', async () => {
    const locks = createTestLocks();
    const database = createTestDatabase();
    const first = await drive({ locks, database, home: bedroom() });
    first.editor.run(setTitle('By the first'));
    await first.editor.shelf.flush();
    const second = await drive({ locks, database });
    expect(second.editor.home.title).toBe('By the first');
    expect([first.editor.shelf.writes, second.editor.shelf.writes]).toEqual([true, false]);

    expect(second.editor.run(setTitle('By the second'))).toEqual({ kind: 'storage-read-only' });
    second.drag([
      [1, 3],
      [3, 2],
    ]);
    expect(second.editor.home.pieces.p1!.at).toEqual([1, 3]);
    const saved = saves(database);
    await second.editor.shelf.flush();
    expect(saves(database)).toBe(saved);

    first.editor.run(setTitle('Later by the first'));
    await first.editor.shelf.flush();
    await second.editor.shelf.takeOver();
    expect(second.editor.shelf.writes).toBe(true);
    expect(first.editor.shelf.writes).toBe(false);
    expect(second.editor.home.title).toBe('Later by the first');
    expect(first.editor.run(setTitle('Too late'))).toEqual({ kind: 'storage-read-only' });
    expect(second.editor.run(setTitle('By the second'))).toBeNull();
    await second.editor.shelf.flush();
    expect([...database.homes.values()].map(({ title }) => title)).toEqual(['By the second']);
  });

  it('a tab that only reads goes on writing where the other left off when that one is closed', async () => {
    const locks = createTestLocks();
    const database = createTestDatabase();
    const first = await drive({ locks, database, home: bedroom() });
    const second = await drive({ locks, database });
    const third = await drive({ locks, database });
    first.editor.run(setTitle('The last word'));
    await first.editor.shelf.flush();
    first.editor.destroy();
    await second.editor.ready;
    await new Promise((settle) => setTimeout(settle, 0));
    expect([second.editor.shelf.writes, third.editor.shelf.writes]).toEqual([true, false]);
    expect(second.editor.home.title).toBe('The last word');
    expect(second.editor.run(setTitle('And another'))).toBeNull();
  });

  it('fault: “saved” stood on the screen while an edit still waited to be written', async () => {
    const { editor, clock } = await drive({ home: bedroom() });
    expect(editor.shelf.saving.state).toBe('saved');
    editor.run(setTitle('Not yet kept'));
    expect(editor.shelf.saving.state).toBe('saving');
    clock.pass(1000);
    await editor.shelf.flush();
    expect(editor.shelf.saving.state).toBe('saved');
  });

  it('a tab that is closed lets the next one write', async () => {
    const locks = createTestLocks();
    const first = await drive({ locks, home: bedroom() });
    first.editor.destroy();
    const second = await drive({ locks });
    expect(second.editor.shelf.writes).toBe(true);
  });
});
