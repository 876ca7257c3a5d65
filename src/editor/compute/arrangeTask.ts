import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { ArrangeRequest } from '../../engine/arranging/request';
import type { Home } from '../../home/home';
import { arrangeQuestion, type ArrangeWishes } from '../../home/questions/arrangeQuestion';
import type { ProposalState } from '../editor';
import { sameValue } from '../sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';

export interface ArrangeTask {
  readonly state: ProposalState;
  start(home: Home, fitted: FittedSurvey, wishes: ArrangeWishes): void;
  /** Says whether the proposal still answers the home as it stands. */
  check(home: Home, fitted: FittedSurvey | null): void;
  show(index: number): void;
  cancel(): void;
  leave(): void;
  refuse(problem: ProposalState['problem']): void;
  end(): void;
}

const NONE: ProposalState = {
  state: 'idle',
  progress: 0,
  proposal: null,
  stale: false,
  problem: null,
  wishes: { cautious: false, aim: 'mean' },
  shown: 0,
};

/** Plans arrangements in a worker of its own, so that the map goes on being drawn meanwhile. */
export function createArrangeTask(
  { arrangeFactory }: Pick<Services, 'arrangeFactory'>,
  changed: () => void,
): ArrangeTask {
  const client = createEngineClient(arrangeFactory);
  let state = NONE;
  let answered: ArrangeRequest | null = null;

  const set = (change: Partial<ProposalState>) => {
    state = { ...state, ...change };
    changed();
  };

  return {
    get state() {
      return state;
    },
    start(home, fitted, wishes) {
      const request = arrangeQuestion(home, fitted, wishes);
      set({ state: 'running', progress: 0, problem: null, wishes });
      client.put(
        'arrange',
        { request },
        {
          progress: (progress) => set({ progress }),
          done(proposal) {
            answered = request;
            set({ state: 'idle', progress: 1, proposal, stale: false, shown: 0 });
          },
          problem: (problem) => set({ state: 'idle', progress: 0, problem }),
        },
      );
    },
    check(home, fitted) {
      if (!state.proposal || !answered) return;
      const stale = !fitted || !sameValue(arrangeQuestion(home, fitted, state.wishes), answered);
      if (stale !== state.stale) set({ stale });
    },
    show(index) {
      const last = state.proposal?.alternatives.length ?? 0;
      const shown = Math.min(last, Math.max(0, Math.trunc(index)));
      if (shown !== state.shown) set({ shown });
    },
    cancel() {
      client.cancel();
      if (state.state === 'running') set({ state: 'idle', progress: 0 });
    },
    leave() {
      client.cancel();
      answered = null;
      if (!sameValue(state, NONE)) {
        state = NONE;
        changed();
      }
    },
    refuse: (problem) => set({ problem }),
    end: () => client.cancel(),
  };
}
