import type { Supposed, WhatIfRequest } from '../../engine/whatIf/assessWhatIf';
import type { SourceChange } from '../../engine/whatIf/sourceChange';
import type { Id } from '../../home/home';
import type { Problem } from '../../home/problem';
import type { Results } from '../editor';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';

export interface WhatIfTask {
  readonly running: boolean;
  /** The last answer; null before there is one. */
  readonly supposed: Supposed | null;
  /** It is of other sources, or of another home, than what is asked now. */
  readonly stale: boolean;
  readonly problem: Problem | null;
  /** What it is to be of from now on; `moving`: the level on which a hand moves a source, and sees that one drawn. */
  follow(measured: Results, changes: readonly SourceChange[], moving: Id | null): void;
  leave(): void;
  end(): void;
}

/** One frame of a screen. */
const FRAME = 16;
const PAUSE = 120;

/** Draws the map as it would be with some sources changed, in a worker of its own. */
export function createWhatIfTask(
  { arrangeFactory, schedule }: Pick<Services, 'arrangeFactory' | 'schedule'>,
  changed: () => void,
): WhatIfTask {
  const client = createEngineClient(arrangeFactory);
  let supposed: Supposed | null = null;
  let problem: Problem | null = null;
  let asked: WhatIfRequest | null = null;
  let next: WhatIfRequest | null = null;
  let callOff = () => {};

  const put = () => {
    const request = next!;
    // A picture for the hand comes to its end; what is next follows it.
    if (client.busy && asked?.rough) return;
    if (client.busy) client.cancel();
    asked = request;
    client.put(
      'whatIf',
      { request },
      {
        done(answer) {
          const before = supposed;
          const others = (before?.pictures ?? []).filter(
            ({ level }) => !answer.pictures.some((picture) => picture.level === level),
          );
          supposed = { ...answer, pictures: [...answer.pictures, ...others] };
          problem = null;
          changed();
          if (next !== request) put();
        },
        problem(reason) {
          supposed = null;
          problem = reason;
          changed();
          if (next !== request) put();
        },
      },
    );
    changed();
  };

  const task: WhatIfTask = {
    get running() {
      return client.busy;
    },
    get supposed() {
      return supposed;
    },
    get stale() {
      return supposed !== null && (asked !== next || client.busy);
    },
    get problem() {
      return problem;
    },
    follow({ assessment, request, stale }, changes, moving) {
      if (changes.length === 0) return task.leave();
      if (!assessment || !request || stale) return;
      const rough = moving !== null;
      const levels = request.levels.filter(({ id }) => !rough || id === moving);
      const wanted: WhatIfRequest = {
        request: { ...request, levels },
        fitted: assessment.fitted,
        changes,
        rough,
      };
      if (sameValue(wanted, next)) return;
      next = wanted;
      callOff();
      callOff = schedule(put, rough ? FRAME : PAUSE);
    },
    leave() {
      callOff();
      client.cancel();
      asked = next = null;
      if (!supposed && !problem) return;
      supposed = problem = null;
      changed();
    },
    end() {
      callOff();
      client.cancel();
    },
  };
  return task;
}
