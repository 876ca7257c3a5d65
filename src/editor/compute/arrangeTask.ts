import type { Answer } from '../../engine/arranging/arrange';
import type { Put } from '../../engine/arranging/place';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { ArrangeRequest } from '../../engine/arranging/request';
import type { Home } from '../../home/home';
import { arrangeQuestion, type ArrangeWishes } from '../../home/questions/arrangeQuestion';
import type { Adjusted, ProposalState, Shown } from '../editor';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import { plannersAnswer } from '../shownAnswer';
import { createEngineClient } from './engineClient';

export interface ArrangeTask {
  readonly state: ProposalState;
  start(home: Home, fitted: FittedSurvey, wishes: ArrangeWishes): void;
  /** Says whether the proposal still answers the home as it stands. */
  check(home: Home, fitted: FittedSurvey | null): void;
  /** True where another answer is looked at now. */
  show(which: Shown): boolean;
  /** Pieces are elsewhere in the answer looked at; their worth is asked for where it is not known, by this question. */
  adjust(adjusted: Adjusted | null, question: ArrangeRequest | null): void;
  cancel(): void;
  /** The answer is let go; these wishes, or those there are at first, hold from now on. */
  leave(wishes?: ArrangeWishes): void;
  refuse(problem: ProposalState['problem']): void;
  end(): void;
}

const NONE: ProposalState = {
  state: 'idle',
  progress: 0,
  least: null,
  proposal: null,
  askedOf: null,
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
  /** By which the places put by hand are judged. */
  let question: ArrangeRequest | null = null;

  const set = (change: Partial<ProposalState>) => {
    state = { ...state, ...change };
    changed();
  };

  /**
   * Asks what the places put by hand are worth: one question at a time, so that of all places on the way of a hand the worker
   * gets those that are the newest when it is free.
   */
  const judge = () => {
    const asked = state.adjusted;
    const of = plannersAnswer(state);
    if (!asked?.judging || !question || client.busy) return;
    client.put(
      'judge',
      { request: question, puts: asked.answer.pieces.map(placeOf) },
      {
        done(answer) {
          const now = state.adjusted;
          if (now && now === asked) set({ adjusted: { ...now, answer, judging: false } });
          else if (now?.judging && of === plannersAnswer(state))
            set({ adjusted: { ...now, answer: withPlacesOf(answer, now.answer) } });
          judge();
        },
        problem: (problem) => set({ problem }),
      },
    );
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
            set({
              state: 'idle',
              progress: 1,
              proposal,
              askedOf: home,
              stale: false,
              shown: 0,
              adjusted: null,
            });
          },
          problem(problem) {
            set({ state: 'idle', progress: 0, problem });
            judge();
          },
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
      if (shown === state.shown || !plannersAnswer({ ...state, shown })) return false;
      set({ shown, adjusted: null });
      return true;
    },
    adjust(adjusted, by) {
      question = by;
      set({ adjusted });
      judge();
    },
    cancel() {
      client.cancel();
      if (state.state === 'running') set({ state: 'idle', progress: 0 });
      judge();
    },
    leave(wishes = NONE.wishes) {
      client.cancel();
      answered = null;
      const empty = { ...NONE, wishes };
      if (!sameValue(state, empty)) {
        state = empty;
        changed();
      }
    },
    refuse: (problem) => set({ problem }),
    end: () => client.cancel(),
  };
}

const placeOf = ({ id, level, at, angle }: Put): Put => ({ id, level, at, angle });

/** An answer of a moment ago with its pieces where they are now, and the rules they break there. */
function withPlacesOf(answer: Answer, now: Answer): Answer {
  const pieces = answer.pieces.map((piece, i) => {
    const { level, at, angle, room, moves, breaks } = now.pieces[i]!;
    return { ...piece, level, at, angle, room, moves, breaks };
  });
  return { ...answer, pieces };
}
