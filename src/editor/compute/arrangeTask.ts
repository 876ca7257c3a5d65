import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { ArrangeRequest } from '../../engine/arranging/request';
import type { Home } from '../../home/home';
import { arrangeQuestion, type ArrangeWishes } from '../../home/questions/arrangeQuestion';
import type { ProposalState, Shown } from '../editor';
import { sameValue } from '../sameValue';
import type { Services } from '../services';
import { plannersAnswer } from '../shownAnswer';
import { createEngineClient } from './engineClient';

export interface ArrangeTask {
  readonly state: ProposalState;
  start(home: Home, fitted: FittedSurvey, wishes: ArrangeWishes): void;
  /** Says whether the proposal still answers the home as it stands. */
  check(home: Home, fitted: FittedSurvey | null): void;
  show(which: Shown): void;
  backToPlanner(): void;
  cancel(): void;
  leave(): void;
  refuse(problem: ProposalState['problem']): void;
  end(): void;
}

const NONE: ProposalState = {
  state: 'idle',
  progress: 0,
  least: null,
  proposal: null,
  stale: false,
  problem: null,
  wishes: { cautious: false, aim: 'mean' },
  shown: 0,
  adjusted: null,
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
      set({ state: 'running', progress: 0, least: null, problem: null, wishes });
      client.put(
        'arrange',
        { request },
        {
          progress: (progress, least) => set({ progress, least: least ?? state.least }),
          done(proposal) {
            answered = request;
            set({ state: 'idle', progress: 1, proposal, stale: false, shown: 0, adjusted: null });
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
    show(which) {
      const shown = which === 'relaxed' ? which : Math.trunc(which);
      if (shown === state.shown || !plannersAnswer({ ...state, shown })) return;
      set({ shown, adjusted: null });
    },
    backToPlanner() {
      if (state.adjusted) set({ adjusted: null });
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
