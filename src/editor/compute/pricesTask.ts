import type { ArrangeRequest } from '../../engine/arranging/request';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { Home } from '../../home/home';
import { arrangeQuestion, type ArrangeWishes } from '../../home/questions/arrangeQuestion';
import type { PricesState } from '../editor';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';

export interface PricesTask {
  readonly state: PricesState;
  start(home: Home, fitted: FittedSurvey, wishes: ArrangeWishes): void;
  /** Says whether the prices still answer the home as it stands. */
  check(home: Home, fitted: FittedSurvey | null): void;
  cancel(): void;
  leave(): void;
  end(): void;
}

const NONE: PricesState = { state: 'idle', progress: 0, prices: null, stale: false, problem: null };

/** Works out what each rule costs, in a worker of its own: the home is arranged anew once for every rule. */
export function createPricesTask(
  { arrangeFactory }: Pick<Services, 'arrangeFactory'>,
  changed: () => void,
): PricesTask {
  const client = createEngineClient(arrangeFactory);
  let state = NONE;
  let answered: { request: ArrangeRequest; wishes: ArrangeWishes } | null = null;

  const set = (change: Partial<PricesState>) => {
    state = { ...state, ...change };
    changed();
  };

  return {
    get state() {
      return state;
    },
    start(home, fitted, wishes) {
      const request = arrangeQuestion(home, fitted, wishes);
      set({ state: 'running', progress: 0, problem: null });
      client.put(
        'prices',
        { request },
        {
          progress: (progress) => set({ progress }),
          done(prices) {
            answered = { request, wishes };
            set({ state: 'idle', progress: 0, prices, stale: false });
          },
          problem: (problem) => set({ state: 'idle', progress: 0, problem }),
        },
      );
    },
    check(home, fitted) {
      if (!answered) return;
      const stale = !fitted || !sameValue(arrangeQuestion(home, fitted, answered.wishes), answered.request);
      if (stale !== state.stale) set({ stale });
    },
    cancel() {
      client.cancel();
      if (state.state === 'running') set({ state: 'idle', progress: 0 });
    },
    leave() {
      client.cancel();
      answered = null;
      if (state === NONE) return;
      state = NONE;
      changed();
    },
    end: () => client.cancel(),
  };
}
