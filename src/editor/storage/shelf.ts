import { parseHome } from '../../home/file/parse';
import { serialiseHome } from '../../home/file/serialise';
import type { Home } from '../../home/home';
import { newHome } from '../../home/newHome';
import type { Problem } from '../../home/problem';
import type { HomeSummary, Shelf } from '../editor';
import type { Services } from '../services';
import { createAutosave, storageProblem } from './autosave';
import { fileName } from './fileName';
import { assetsOf, pack, unpack } from './packing';
import { createWriter } from './writer';

/** What the shelf needs of the session it keeps homes for. */
export interface Desk {
  readonly home: Home;
  /** Puts another home on the desk, without history. */
  lay(home: Home): void;
  say(problem: Problem): void;
  changed(): void;
}

export interface KeptShelf extends Shelf {
  /** Opens the last home, or the first visit's. Nothing is saved before this has settled. */
  start(): Promise<void>;
  /** The home has changed for good. */
  touch(): void;
  end(): void;
}

const readingNumber = (id: string) => Number(id.replace(/^\D+/, '')) || 0;
const lastReading = (home: Home) => Math.max(0, ...Object.keys(home.readings).map(readingNumber));

/** The homes on this device. Where storage is refused all goes on in memory, and says so. */
export function createShelf(services: Services, desk: Desk): KeptShelf {
  const { database, clock } = services;
  let homes: HomeSummary[] = [];
  let current = services.newName();
  let keptThrough = 0;
  let loaded = false;
  let ended = false;
  let started = Promise.resolve();
  /** Assets as they were last written, by owner. */
  let written: Record<string, unknown> = {};

  const writer = createWriter(
    services.locks,
    () => {
      if (ended) return;
      if (!writer.writes) autosave.drop();
      desk.changed();
    },
    () => void started.then(refresh),
  );

  const write = async () => {
    const id = current;
    const home = desk.home;
    const assets = assetsOf(home);
    const fresh = Object.keys(assets).filter((owner) => assets[owner] !== written[owner]);
    const gone = Object.keys(written).filter((owner) => !(owner in assets));
    const record = {
      id,
      title: home.title,
      savedAt: clock(),
      keptThrough,
      text: pack(home),
      lastIds: home.lastIds,
    };
    await database.save(
      record,
      fresh.map((owner) => ({ home: id, owner, data: assets[owner] })),
      gone,
    );
    if (id === current) written = assets;
    const summary = { id, title: record.title, savedAt: record.savedAt };
    homes = [summary, ...homes.filter((other) => other.id !== id)];
  };

  const autosave = createAutosave(write, services.schedule, clock, () => desk.changed());

  const lay = (id: string, home: Home, kept: number, assets: Record<string, unknown>) => {
    current = id;
    keptThrough = kept;
    written = assets;
    desk.lay(home);
    desk.changed();
  };

  /** Opens a kept home; the problem where it cannot be. */
  const fetch = async (id: string): Promise<Problem | null> => {
    try {
      const found = await database.load(id);
      if (!found) return { kind: 'home-missing', id };
      const opened = unpack(found.record, found.assets);
      if (!opened.ok) return { kind: 'file-bad', fileName: found.record.title, problems: opened.problems };
      // What was done while this one was fetched still belongs to the other.
      await shelf.flush();
      lay(id, opened.home, found.record.keptThrough, assetsOf(opened.home));
      return null;
    } catch (reason) {
      return storageProblem(reason);
    }
  };

  const listed = async () => {
    homes = (await database.list())
      .map(({ id, title, savedAt }) => ({ id, title, savedAt }))
      .sort((a, b) => b.savedAt - a.savedAt);
  };

  /** The tab that wrote until now may have saved since this one loaded. */
  const refresh = async () => {
    await listed().catch(() => undefined);
    const kept = homes.some((home) => home.id === current);
    const problem = kept ? await fetch(current) : null;
    if (problem) desk.say(problem);
    if (!kept) shelf.touch();
    desk.changed();
  };

  const load = async () => {
    await writer.ask();
    try {
      await listed();
    } catch (reason) {
      desk.say(storageProblem(reason));
    }
    const problem = homes.length > 0 ? await fetch(homes[0]!.id) : null;
    if (problem) desk.say(problem);
    const first = homes.length === 0 ? await services.firstHome?.() : null;
    // A sample comes from a file, so nothing in it waits to be kept.
    if (first) lay(services.newName(), first, lastReading(first), {});
    loaded = true;
    // It is one of the homes on this device from now on, and is listed among them.
    if (first) {
      shelf.touch();
      await shelf.flush();
    }
    desk.changed();
  };

  const shelf: KeptShelf = {
    get current() {
      return current;
    },
    get homes() {
      return homes;
    },
    get saving() {
      return autosave.saving;
    },
    get writes() {
      return writer.writes;
    },
    get unkept() {
      return Object.keys(desk.home.readings).filter((id) => readingNumber(id) > keptThrough).length;
    },
    start() {
      started = load();
      return started;
    },
    touch() {
      if (loaded && writer.writes) autosave.touch();
    },
    async flush() {
      if (loaded && writer.writes) await autosave.flush();
    },
    async takeOver() {
      await writer.steal();
      await refresh();
    },
    async open(id) {
      await shelf.flush();
      const problem = await fetch(id);
      if (problem) desk.say(problem);
    },
    async begin(home) {
      await shelf.flush();
      lay(services.newName(), home ?? newHome(), home ? lastReading(home) : 0, {});
      shelf.touch();
      await shelf.flush();
    },
    async read(text, name) {
      const parsed = parseHome(text);
      if (!parsed.ok) return { kind: 'file-bad', fileName: name, problems: parsed.problems };
      await shelf.begin(parsed.home);
      return null;
    },
    write() {
      keptThrough = Math.max(keptThrough, lastReading(desk.home));
      shelf.touch();
      desk.changed();
      return { text: serialiseHome(desk.home), fileName: fileName(desk.home.title) };
    },
    async remove(id) {
      try {
        if (id === current) autosave.drop();
        await database.remove(id);
        homes = homes.filter((home) => home.id !== id);
        if (id === current) {
          if (homes.length > 0) await shelf.open(homes[0].id);
          else lay(services.newName(), newHome(), 0, {});
        }
      } catch (reason) {
        desk.say(storageProblem(reason));
      }
      desk.changed();
    },
    end() {
      ended = true;
      autosave.drop();
      writer.release();
    },
  };
  return shelf;
}
