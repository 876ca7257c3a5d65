import type { CompareRequest } from '../../engine/whatIf/compareArrangements';
import type { SourceChange } from '../../engine/whatIf/sourceChange';
import type { Home } from '../../home/home';
import { compareQuestion } from '../../home/questions/compareQuestion';
import type { Results } from '../editor';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import type { ComparedState } from '../trying';
import { createEngineClient } from './engineClient';

export interface CompareTask {
  readonly state: ComparedState;
  /** Home, map or what is tried may be others: once they rest, what has changed is worked out again. */
  follow(home: Home, measured: Results, tried: readonly SourceChange[]): void;
  leave(): void;
  end(): void;
}

const NONE: ComparedState = { state: 'idle', compared: null, stale: false, problem: null };

/** Lists of arrangements are changed a step at a time; asking in between would be work for nothing. */
const PAUSE = 250;

/** Keeps the arrangements of a home compared, in a worker of its own. */
export function createCompareTask(
  { arrangeFactory, schedule }: Pick<Services, 'arrangeFactory' | 'schedule'>,
  changed: () => void,
): CompareTask {
  const client = createEngineClient(arrangeFactory);
  let state = NONE;
  let asked: CompareRequest | null = null;
  let callOff = () => {};

  const set = (change: Partial<ComparedState>) => {
    state = { ...state, ...change };
    changed();
  };
  const leave = () => {
    callOff();
    client.cancel();
    asked = null;
    if (state === NONE) return;
    state = NONE;
    changed();
  };

  const put = (request: CompareRequest) => {
    // What is under way answers a question that nobody has any more.
    if (client.busy) client.cancel();
    asked = request;
    set({ state: 'running', stale: state.compared !== null, problem: null });
    client.put(
      'compare',
      { request },
      {
        done: (compared) => set({ state: 'idle', compared, stale: false }),
        problem: (problem) => set({ state: 'idle', problem }),
      },
    );
  };

  return {
    get state() {
      return state;
    },
    follow(home, { assessment, stale, sampling }, tried) {
      callOff();
      if (tried.length === 0 && Object.keys(home.arrangements).length === 0) return leave();
      // What a better map will say differently is not worth saying yet.
      if (!assessment || stale || sampling !== null) {
        if (state.compared && !state.stale) set({ stale: true });
        return;
      }
      const request = compareQuestion(home, assessment.fitted, tried);
      if (sameValue(request, asked)) {
        if (state.stale && state.state === 'idle') set({ stale: false });
        return;
      }
      callOff = schedule(() => put(request), PAUSE);
    },
    leave,
    end() {
      callOff();
      client.cancel();
    },
  };
}
