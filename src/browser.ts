import { createDatabase } from './editor/storage/database';
import type { Held, Locks } from './editor/storage/writer';
import type { Line, Services } from './editor/services';
import type { Home } from './home/home';
import { lengthText } from './words/numbers';
import { parseLength } from './words/quantities';

/** What a browser gives to a session. */
export function browserServices(firstHome: () => Promise<Home | null>): Services {
  return {
    engineFactory: startWorker,
    samplingFactory: startWorker,
    arrangeFactory: startWorker,
    database: createDatabase('stillroom'),
    locks: browserLocks(),
    clock: () => Date.now(),
    schedule(task, milliseconds) {
      const timer = setTimeout(task, milliseconds);
      return () => clearTimeout(timer);
    },
    newName: () => crypto.randomUUID?.() ?? `${Date.now()}-${Math.random().toString(36).slice(2)}`,
    firstHome,
    lengthText,
    parseLength,
  };
}

function startWorker(): Line {
  const worker = new Worker(new URL('./editor/compute/engineWorker.ts', import.meta.url), { type: 'module' });
  return {
    post: (message) => worker.postMessage(message),
    listen(received, failed) {
      worker.onmessage = (event) => received(event.data);
      worker.onerror = (event) => failed(event.message || 'the worker did not load');
      worker.onmessageerror = () => failed('the worker sent something that could not be read');
    },
    end: () => worker.terminate(),
  };
}

/** Web Locks; where a browser has none there is no way to know of other tabs, and every tab writes. */
function browserLocks(): Locks {
  const manager = navigator.locks as LockManager | undefined;
  if (!manager) {
    const alone: Held = { lost: new Promise(() => {}), release: () => {} };
    return { take: async () => alone, wait: async () => alone };
  }
  const request = (name: string, options: LockOptions): Promise<Held | null> =>
    new Promise((given) => {
      let release = () => {};
      const released = new Promise<void>((settle) => (release = settle));
      let lose = () => {};
      const lost = new Promise<void>((settle) => (lose = settle));
      const hold = (lock: Lock | null): Promise<void> | undefined => {
        given(lock && { lost, release });
        return lock ? released : undefined;
      };
      // The promise of a stolen lock is rejected: that is how its holder hears of it.
      manager.request(name, options, hold).catch(lose);
    });
  return {
    take: (name, how) => request(name, how === 'steal' ? { steal: true } : { ifAvailable: true }),
    // A request without options is granted some time, and never with null.
    wait: async (name) => (await request(name, {}))!,
  };
}
