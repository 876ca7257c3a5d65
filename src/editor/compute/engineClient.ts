import type { Problem } from '../../home/problem';
import type { Line } from '../services';
import type { Answers, Ask, Reply } from './protocol';

interface Listener<Answer> {
  progress?(share: number, least?: number): void;
  done(answer: Answer): void;
  problem(problem: Problem): void;
}

type Question<K extends Ask['ask']> = Omit<Extract<Ask, { ask: K }>, 'key' | 'ask'>;

export interface EngineClient {
  /** Puts a question. Replies to earlier ones are no longer current and are dropped. */
  put<K extends Ask['ask']>(ask: K, question: Question<K>, listener: Listener<Answers[K]>): void;
  /** Replies that are still to come are dropped; the worker goes on. */
  forget(): void;
  /** Ends the worker in the middle of its work; the next question starts a fresh one. */
  cancel(): void;
  readonly busy: boolean;
}

/** Speaks to one worker, one current question at a time. */
export function createEngineClient(factory: () => Line): EngineClient {
  let line: Line | null = null;
  let key = 0;
  let current: { key: number; listener: Listener<Answers[Ask['ask']]> } | null = null;

  const failed = (detail: string) => {
    line = null;
    const asked = current;
    current = null;
    asked?.listener.problem({ kind: 'work-failed', detail });
  };

  const received = (message: unknown) => {
    const reply = message as Reply;
    if (!current || reply.key !== current.key) return;
    const { listener } = current;
    if (reply.reply === 'progress') return listener.progress?.(reply.share, reply.least);
    current = null;
    if (reply.reply === 'done') listener.done(reply.answer);
    else listener.problem(reply.problem);
  };

  const connected = () => {
    if (line) return line;
    const fresh = factory();
    line = fresh;
    // An ended worker may still have words on the way; they are nobody's.
    fresh.listen(
      (message) => line === fresh && received(message),
      (detail) => line === fresh && failed(detail),
    );
    return fresh;
  };

  return {
    put(ask, question, listener) {
      key += 1;
      current = { key, listener: listener as Listener<Answers[Ask['ask']]> };
      try {
        connected().post({ ask, key, ...question });
      } catch (reason) {
        failed(reason instanceof Error ? reason.message : String(reason));
      }
    },
    forget() {
      current = null;
    },
    cancel() {
      current = null;
      line?.end();
      line = null;
    },
    get busy() {
      return current !== null;
    },
  };
}
