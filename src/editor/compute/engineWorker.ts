import { answer } from './answer';
import { buffersOf } from './buffers';
import type { Ask, Reply } from './protocol';

/** The worker's entry: one question at a time, large arrays handed over instead of copied. */
const scope = self as unknown as DedicatedWorkerGlobalScope;

scope.onmessage = (event: MessageEvent<Ask>) =>
  answer(event.data, (reply: Reply) =>
    scope.postMessage(reply, reply.reply === 'done' ? buffersOf(reply.answer) : []),
  );
