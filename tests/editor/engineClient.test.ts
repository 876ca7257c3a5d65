import { MessageChannel } from 'node:worker_threads';
import type { MessagePort } from 'node:worker_threads';
import { afterEach, describe, expect, it } from 'vitest';
import { answer } from '../../src/editor/compute/answer';
import { buffersOf } from '../../src/editor/compute/buffers';
import { createEngineClient } from '../../src/editor/compute/engineClient';
import type { Ask, Reply } from '../../src/editor/compute/protocol';
import type { Assessment } from '../../src/engine/assess';
import { assessHome } from '../../src/engine/assessHome';
import { assessQuestion } from '../../src/home/questions/assessQuestion';
import type { Problem } from '../../src/home/problem';
import { bedroom } from '../support/homes';

const ports: MessagePort[] = [];
afterEach(() => {
  for (const port of ports.splice(0)) port.close();
});

/** The far end of a real channel; `handle` plays the worker. */
function channel(handle: (ask: Ask, port: MessagePort) => void) {
  let started = 0;
  const factory = () => {
    started += 1;
    const { port1, port2 } = new MessageChannel();
    ports.push(port1, port2);
    port2.on('message', (ask: Ask) => handle(ask, port2));
    return {
      post: (message: unknown) => port1.postMessage(message),
      listen: (received: (message: unknown) => void) => void port1.on('message', received),
      end: () => port1.close(),
    };
  };
  return { factory, started: () => started };
}

const engine = (ask: Ask, port: MessagePort) =>
  answer(ask, (reply) => port.postMessage(reply, reply.reply === 'done' ? buffersOf(reply.answer) : []));

const request = assessQuestion(bedroom());

describe('engine client', () => {
  it('over a real channel gives the very numbers of the engine, with progress that grows to 1', async () => {
    const client = createEngineClient(channel(engine).factory);
    const shares: number[] = [];
    const assessment = await new Promise<Assessment>((done, problem) =>
      client.put(
        'assess',
        { request, sampled: null },
        { done, problem, progress: (share) => shares.push(share) },
      ),
    );
    const direct = assessHome(request);
    expect(direct.ok && direct.assessment).toEqual(assessment);
    expect(shares.at(-1)).toBeCloseTo(1, 9);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(client.busy).toBe(false);
  });

  it('drops replies to a question that is no longer current', async () => {
    const held: { ask: Ask; port: MessagePort }[] = [];
    const client = createEngineClient(channel((ask, port) => void held.push({ ask, port })).factory);
    const heard: string[] = [];
    const listen = (name: string, then = () => {}) => ({
      done: () => (heard.push(name), then()),
      problem: () => void heard.push(`${name} failed`),
    });
    client.put('assess', { request, sampled: null }, listen('first'));
    await new Promise<void>((settle) => {
      client.put('assess', { request, sampled: null }, listen('second', settle));
      const wait = setInterval(() => {
        if (held.length < 2) return;
        clearInterval(wait);
        for (const { ask, port } of held) {
          const reply: Reply = { reply: 'done', key: ask.key, answer: {} as Assessment };
          port.postMessage(reply);
          port.postMessage({ reply: 'progress', key: ask.key, share: 0.5 });
        }
      }, 1);
    });
    expect(heard).toEqual(['second']);
  });

  it('cancel ends the worker; what it still says is nobody’s; the next question starts a fresh one', async () => {
    const { factory, started } = channel(engine);
    const client = createEngineClient(factory);
    let heard = 0;
    client.put(
      'assess',
      { request, sampled: null },
      { done: () => (heard += 1), problem: () => (heard += 1) },
    );
    client.cancel();
    expect(client.busy).toBe(false);
    await new Promise<Assessment>((done, problem) =>
      client.put('assess', { request, sampled: null }, { done, problem }),
    );
    expect([heard, started()]).toEqual([0, 2]);
  });

  it('a fault inside the engine is a problem, not a silence', async () => {
    const client = createEngineClient(channel(engine).factory);
    const broken = { ...request, survey: null } as unknown as typeof request;
    const problem = await new Promise<Problem>((settle, reject) =>
      client.put('assess', { sampled: null, request: broken }, { done: reject, problem: settle }),
    );
    expect(problem.kind).toBe('work-failed');
  });

  it('a worker that cannot be started, or that stops by itself, is a problem; the next question starts anew', () => {
    let fail: (detail: string) => void = () => {};
    let starts = 0;
    const client = createEngineClient(() => {
      starts += 1;
      if (starts === 1) throw new Error('not allowed here');
      return { post() {}, end() {}, listen: (_received, failed) => (fail = failed) };
    });
    const problems: Problem[] = [];
    const listener = { done: () => {}, problem: (problem: Problem) => problems.push(problem) };
    client.put('assess', { request, sampled: null }, listener);
    client.put('assess', { request, sampled: null }, listener);
    fail('out of memory');
    client.put('assess', { request, sampled: null }, listener);
    expect(problems).toEqual([
      { kind: 'work-failed', detail: 'not allowed here' },
      { kind: 'work-failed', detail: 'out of memory' },
    ]);
    expect(starts).toBe(3);
  });
});
