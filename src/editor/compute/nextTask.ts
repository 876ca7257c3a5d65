import type { NextRequest } from '../../engine/nextReadings/request';
import type { Home } from '../../home/home';
import { nextQuestion } from '../../home/questions/nextQuestion';
import type { AskedPlaces, NextState, Results } from '../editor';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';

export interface NextTask {
  readonly state: NextState;
  /** What the list is for from now on; null: no list. */
  ask(what: AskedPlaces | null, home: Home, results: Results): void;
  /** The home or its map is another: the list is worked out again once the map stands. */
  follow(home: Home, results: Results): void;
  /** The place of the list that is chosen, by rank from 0. */
  pick(rank: number | null): void;
  end(): void;
}

const NONE: NextState = {
  ask: null,
  state: 'idle',
  progress: 0,
  answer: null,
  stale: false,
  problem: null,
  picked: null,
};

/** More is not carried in a head. */
const LISTED = 5;

/** A reading this near to a place was taken there, metres. */
const SAME = 0.2;

/** Keeps a list of the places to read next in step with the map, in a worker of its own. */
export function createNextTask(
  { arrangeFactory }: Pick<Services, 'arrangeFactory'>,
  changed: () => void,
): NextTask {
  const client = createEngineClient(arrangeFactory);
  let state = NONE;
  let asked: NextRequest | null = null;
  /** Readings that were there when places were given. */
  let before: Home['readings'] = {};

  const set = (change: Partial<NextState>) => {
    state = { ...state, ...change };
    changed();
  };
  const leave = () => {
    client.cancel();
    asked = null;
    if (state === NONE) return;
    state = NONE;
    changed();
  };

  const put = (request: NextRequest) => {
    asked = request;
    set({ state: 'running', progress: 0, stale: state.answer !== null, problem: null });
    client.put(
      'next',
      { request },
      {
        progress: (progress) => set({ progress }),
        done(answer) {
          const before = state.picked === null ? null : state.answer?.readings[state.picked];
          const rank = answer.readings.findIndex(({ level, at }) =>
            sameValue([level, at], before && [before.level, before.at]),
          );
          set({ state: 'idle', progress: 0, answer, stale: false, picked: rank < 0 ? null : rank });
        },
        problem: (problem) => set({ state: 'idle', progress: 0, problem }),
      },
    );
  };

  /** Places that are given are worked out by nobody; each is gone from the list once it is read. */
  const give = ({ places }: Extract<AskedPlaces, { kind: 'given' }>, { readings }: Home) => {
    const taken = Object.values(readings).filter(({ id }) => !(id in before));
    const left = places.filter(
      ({ level, at }) =>
        !taken.some((one) => one.level === level && Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) <= SAME),
    );
    if (left.length === 0) return leave();
    if (left.length === state.answer?.readings.length) return;
    const rows = left.map(({ level, at, height }) => ({ level, at, height, effect: null, drawn: 0 }));
    set({ answer: { readings: rows, enough: false }, picked: null });
  };

  const task: NextTask = {
    get state() {
      return state;
    },
    ask(what, home, results) {
      leave();
      if (!what) return;
      state = { ...NONE, ask: what };
      before = home.readings;
      changed();
      task.follow(home, results);
    },
    follow(home, { assessment, request, stale, sampling }) {
      const { ask } = state;
      if (!ask) return;
      if (!isThere(home, ask)) return leave();
      if (ask.kind === 'given') return give(ask, home);
      // What a better map will say differently is not worth saying yet.
      if (!assessment || !request || stale || sampling !== null) {
        if (state.answer && !state.stale) set({ stale: true });
        return;
      }
      const question = nextQuestion(home, request, assessment, ask, LISTED);
      if (!sameValue(question, asked)) put(question);
      else if (state.stale && state.state === 'idle') set({ stale: false });
    },
    pick(rank) {
      if (rank !== state.picked) set({ picked: rank });
    },
    end: () => client.cancel(),
  };
  return task;
}

/** Whether what is to be made surer is still in the home. */
function isThere(home: Home, ask: AskedPlaces): boolean {
  if (ask.kind === 'map') return true;
  if (ask.kind === 'given') return ask.places.every(({ piece }) => piece in home.pieces);
  if (ask.kind === 'choice') return ask.pieces.every(({ id }) => id in home.pieces);
  return ask.id in (ask.kind === 'room' ? home.rooms : home.pieces);
}
