import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase } from 'idb';

/** A home as it is kept: its file text without pictures and samples, which are kept apart since they never change. */
export interface HomeRecord {
  id: string;
  title: string;
  savedAt: number;
  /** The number of the last reading that is in a file the person keeps. */
  keptThrough: number;
  text: string;
  lastIds: Record<string, number>;
}

/** A backdrop picture or a recording's samples, under home and owner. */
export interface Asset {
  home: string;
  owner: string;
  data: unknown;
}

export interface HomeDatabase {
  list(): Promise<Omit<HomeRecord, 'text' | 'lastIds'>[]>;
  load(id: string): Promise<{ record: HomeRecord; assets: Asset[] } | null>;
  /** All or nothing: the record, new assets, and the going of those without an owner. */
  save(record: HomeRecord, assets: Asset[], gone: string[]): Promise<void>;
  remove(id: string): Promise<void>;
}

interface Schema extends DBSchema {
  homes: { key: string; value: HomeRecord };
  assets: { key: [string, string]; value: Asset; indexes: { home: string } };
}

/** Homes in the browser's IndexedDB. It is opened at first use; a refusal comes out of the call that met it. */
export function createDatabase(name: string): HomeDatabase {
  let opening: Promise<IDBPDatabase<Schema>> | null = null;
  const open = () => {
    opening ??= openDB<Schema>(name, 1, {
      upgrade(db) {
        db.createObjectStore('homes', { keyPath: 'id' });
        db.createObjectStore('assets', { keyPath: ['home', 'owner'] }).createIndex('home', 'home');
      },
      terminated: () => (opening = null),
    }).catch((reason) => {
      opening = null;
      throw reason;
    });
    return opening;
  };

  return {
    async list() {
      const homes = await (await open()).getAll('homes');
      return homes.map(({ id, title, savedAt, keptThrough }) => ({ id, title, savedAt, keptThrough }));
    },
    async load(id) {
      const db = await open();
      const record = await db.get('homes', id);
      return record ? { record, assets: await db.getAllFromIndex('assets', 'home', id) } : null;
    },
    async save(record, assets, gone) {
      const change = (await open()).transaction(['homes', 'assets'], 'readwrite');
      const kept = change.objectStore('assets');
      await Promise.all([
        change.objectStore('homes').put(record),
        ...assets.map((asset) => kept.put(asset)),
        ...gone.map((owner) => kept.delete([record.id, owner])),
        change.done,
      ]);
    },
    async remove(id) {
      const change = (await open()).transaction(['homes', 'assets'], 'readwrite');
      const kept = change.objectStore('assets');
      const keys = await kept.index('home').getAllKeys(id);
      await Promise.all([
        change.objectStore('homes').delete(id),
        ...keys.map((key) => kept.delete(key)),
        change.done,
      ]);
    },
  };
}
