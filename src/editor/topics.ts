import type { Topic } from './editor';

export interface Topics {
  subscribe(topic: Topic, listener: () => void): () => void;
  tell(...topics: Topic[]): void;
  silence(): void;
}

/** Listeners per topic, so that a moving pointer does not wake the lists of rooms. */
export function createTopics(): Topics {
  const listeners = new Map<Topic, Set<() => void>>();
  return {
    subscribe(topic, listener) {
      const own = listeners.get(topic) ?? new Set();
      listeners.set(topic, own);
      own.add(listener);
      return () => own.delete(listener);
    },
    tell(...topics) {
      for (const topic of topics) for (const listener of [...(listeners.get(topic) ?? [])]) listener();
    },
    silence() {
      listeners.clear();
    },
  };
}
