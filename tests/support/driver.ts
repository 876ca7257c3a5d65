import { createEditor } from '../../src/editor/createEditor';
import { toScreen } from '../../src/editor/camera';
import { answer } from '../../src/editor/compute/answer';
import type { Ask, Reply } from '../../src/editor/compute/protocol';
import type { Editor, KeyInput, PointerInput } from '../../src/editor/editor';
import type { Line, Services } from '../../src/editor/services';
import type { HomeDatabase, HomeRecord, Asset } from '../../src/editor/storage/database';
import type { Held, Locks } from '../../src/editor/storage/writer';
import type { Home, Point } from '../../src/home/home';
import { lengthText } from '../../src/words/numbers';
import { parseLength } from '../../src/words/quantities';

/** A clock that moves when it is told to, and runs what was scheduled meanwhile. */
function createTestClock() {
  let now = 1_700_000_000_000;
  let tasks: { at: number; task: () => void }[] = [];
  return {
    clock: () => now,
    schedule(task: () => void, milliseconds: number) {
      const entry = { at: now + milliseconds, task };
      tasks.push(entry);
      return () => void (tasks = tasks.filter((each) => each !== entry));
    },
    /** Lets time pass; tasks run in order, also those that they schedule. */
    pass(milliseconds: number) {
      const end = now + milliseconds;
      for (;;) {
        const next = tasks.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at)[0];
        if (!next) break;
        tasks = tasks.filter((each) => each !== next);
        now = Math.max(now, next.at);
        next.task();
      }
      now = end;
    },
  };
}

/** A line to an engine in this thread that answers when `work` is called, and counts what it was asked. */
function createTestEngine() {
  const asks: Ask[] = [];
  let waiting: { ask: Ask; send: (reply: Reply) => void }[] = [];
  let started = 0;
  let ended = 0;
  return {
    asks,
    count: (kind: Ask['ask']) => asks.filter(({ ask }) => ask === kind).length,
    get started() {
      return started;
    },
    get ended() {
      return ended;
    },
    /** Answers all that waits. */
    work() {
      while (waiting.length > 0) {
        const { ask, send } = waiting.shift()!;
        answer(ask, send);
      }
    },
    factory: (): Line => {
      started += 1;
      let received: (message: unknown) => void = () => {};
      let open = true;
      return {
        post(message) {
          const ask = structuredClone(message) as Ask;
          asks.push(ask);
          waiting.push({ ask, send: (reply) => open && received(structuredClone(reply)) });
        },
        listen(onMessage) {
          received = onMessage;
        },
        end() {
          open = false;
          ended += 1;
          waiting = [];
        },
      };
    },
  };
}

/** Homes in memory, with every save counted; `refuse` makes saves fail. */
export function createTestDatabase() {
  const homes = new Map<string, HomeRecord>();
  const assets = new Map<string, Asset>();
  const log: string[] = [];
  const state = { refuse: null as Error | null, log, homes, assets };
  const meet = () => {
    if (state.refuse) throw state.refuse;
  };
  const database: HomeDatabase = {
    async list() {
      meet();
      log.push('list');
      return [...homes.values()];
    },
    async load(id) {
      meet();
      log.push('load');
      const record = homes.get(id);
      return record ? { record, assets: [...assets.values()].filter(({ home }) => home === id) } : null;
    },
    async save(record, fresh, gone) {
      meet();
      log.push('save');
      homes.set(record.id, structuredClone(record));
      for (const asset of fresh) assets.set(`${asset.home} ${asset.owner}`, asset);
      for (const owner of gone) assets.delete(`${record.id} ${owner}`);
    },
    async remove(id) {
      meet();
      log.push('remove');
      homes.delete(id);
    },
  };
  return Object.assign(state, { database });
}

/** Locks shared by all sessions of one test; those who wait are served in turn. */
export function createTestLocks(): Locks {
  const holders = new Map<string, () => void>();
  const lines = new Map<string, ((held: Held) => void)[]>();
  const grant = (name: string): Held => {
    let lose = () => {};
    const lost = new Promise<void>((settle) => (lose = settle));
    holders.set(name, lose);
    return {
      lost,
      release() {
        if (holders.get(name) !== lose) return;
        holders.delete(name);
        lines.get(name)?.shift()?.(grant(name));
      },
    };
  };
  return {
    async take(name, how) {
      const holder = holders.get(name);
      if (holder && how === 'free') return null;
      holder?.();
      return grant(name);
    },
    wait: (name) =>
      new Promise((given) => {
        if (holders.has(name)) lines.set(name, [...(lines.get(name) ?? []), given]);
        else given(grant(name));
      }),
  };
}

export interface Driver {
  editor: Editor;
  clock: ReturnType<typeof createTestClock>;
  engine: ReturnType<typeof createTestEngine>;
  sampler: ReturnType<typeof createTestEngine>;
  planner: ReturnType<typeof createTestEngine>;
  database: ReturnType<typeof createTestDatabase>;
  /** Presses and lifts at a plan point. */
  click(at: Point, how?: Partial<PointerInput>): void;
  doubleClick(at: Point): void;
  hover(at: Point, how?: Partial<PointerInput>): void;
  /** Presses at the first point, moves through the rest, and lifts unless `hold`. */
  drag(path: Point[], how?: Partial<PointerInput> & { hold?: boolean }): void;
  lift(at: Point, how?: Partial<PointerInput>): void;
  /** One key, or a text stroke by stroke. */
  key(key: string, how?: Partial<KeyInput>): boolean;
  type(text: string): void;
  /** Lets the map be asked for and answered. */
  settle(): void;
}

interface Start {
  home?: Home;
  locks?: Locks;
  database?: ReturnType<typeof createTestDatabase>;
  services?: Partial<Services>;
  /** CSS pixels per metre. */
  scale?: number;
}

let names = 0;

/** A whole session, driven as a hand would: all positions in plan metres. */
export async function drive({ home, locks, database, services, scale = 100 }: Start = {}): Promise<Driver> {
  const clock = createTestClock();
  const engine = createTestEngine();
  const sampler = createTestEngine();
  const planner = createTestEngine();
  const kept = database ?? createTestDatabase();
  const editor = createEditor({
    engineFactory: engine.factory,
    samplingFactory: sampler.factory,
    arrangeFactory: planner.factory,
    database: kept.database,
    locks: locks ?? createTestLocks(),
    clock: clock.clock,
    schedule: clock.schedule,
    newName: () => `home-${(names += 1)}`,
    firstHome: async () => home ?? null,
    lengthText,
    parseLength,
    ...services,
  });
  await editor.ready;
  editor.resize(800, 600);
  editor.zoomBy(scale / editor.camera.scale);

  const input = (at: Point, how: Partial<PointerInput> = {}): PointerInput => {
    const [x, y] = toScreen(editor.camera, at);
    const plain = { id: 1, type: 'mouse' as const, button: 0, shift: false, alt: false, command: false };
    return { ...plain, x, y, time: clock.clock(), ...how };
  };

  const driver: Driver = {
    editor,
    clock,
    engine,
    sampler,
    planner,
    database: kept,
    click(at, how) {
      editor.pointer.move(input(at, how));
      editor.pointer.down(input(at, how));
      editor.pointer.up(input(at, how));
    },
    doubleClick(at) {
      driver.click(at);
      driver.click(at);
      editor.pointer.doubleClick(input(at));
    },
    hover: (at, how) => editor.pointer.move(input(at, how)),
    drag(path, how = {}) {
      const { hold, ...rest } = how;
      editor.pointer.down(input(path[0]!, rest));
      for (const at of path.slice(1)) editor.pointer.move(input(at, rest));
      if (!hold) editor.pointer.up(input(path.at(-1)!, rest));
    },
    lift: (at, how) => editor.pointer.up(input(at, how)),
    key: (key, how) => editor.key({ key, shift: false, alt: false, command: false, ...how }),
    type(text) {
      for (const key of text) driver.key(key);
    },
    settle() {
      clock.pass(1000);
      engine.work();
    },
  };
  return driver;
}
