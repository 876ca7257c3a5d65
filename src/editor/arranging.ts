import { createAdjusting, type Adjusting } from './adjusting';
import { createArrangeOnEntry } from './arrangeOnEntry';
import { createArrangeTask } from './compute/arrangeTask';
import { createPricesTask } from './compute/pricesTask';
import { keepLast, keepSame } from './keepLast';
import { questionShown } from './questionShown';
import { takeAnswer } from './takeAnswer';
import { sameValue } from '../engine/sameValue';
import { assessQuestion } from '../home/questions/assessQuestion';
import type { Arranging, Results, View } from './editor';
import type { Edit } from '../home/edits/edit';
import type { Here } from './compute/loadHere';
import type { ArrangeRequest } from '../engine/arranging/request';
import type { Home, Id } from '../home/home';
import type { Problem } from '../home/problem';
import type { Services } from './services';

interface Parts {
  services: Services;
  home(): Home;
  view(): View;
  results(): Results;
  /** The step of the home's history that stands last. */
  lastStep(): unknown;
  engine(): Here | null;
  run(edit: Edit): Problem | null;
  say(problem: Problem): void;
  changed(): void;
}

/** What the rest of the session tells the planning of furniture. */
interface Follower {
  /** The answer that is looked at, for the hand to change. */
  readonly adjusting: Adjusting;
  /** Home or map may be others than those that were asked about. */
  check(): void;
  follow(view: View): void;
  restart(view: View): void;
  end(): void;
}

/** Furniture is arranged: asked for by hand or on coming to its stage, looked at, changed, and taken or left. */
export function createArranging(parts: Parts): Arranging & Follower {
  const task = createArrangeTask(parts.services, parts.changed);
  const prices = createPricesTask(parts.services, parts.changed);
  const fitted = () => parts.results().assessment?.fitted ?? null;
  const question = () => {
    const known = fitted();
    return known && questionShown(parts.home(), known, task.state);
  };

  /** Of which the answer is. */
  let round: Id | null = null;

  // What the rooms ask is worked out once for all places on the way of a hand.
  const same = keepSame<ArrangeRequest>();
  const rulesOf = keepLast((engine: Here, asked: ArrangeRequest) => engine.brokenRules(asked));
  const adjusting = createAdjusting({
    home: parts.home,
    view: parts.view,
    state: () => task.state,
    lastStep: parts.lastStep,
    rules() {
      const [asked, engine] = [question(), parts.engine()];
      return asked && engine && rulesOf(engine, same(asked));
    },
    put: (adjusted) => task.adjust(adjusted, question()),
    stepped: parts.changed,
    say: parts.say,
  });

  const arranging: Arranging & Follower = {
    adjusting,
    get state() {
      return task.state;
    },
    ask(wishes) {
      const known = fitted();
      if (!known) return task.refuse({ kind: 'no-map-to-arrange-on' });
      task.start(parts.home(), known, { ...task.state.wishes, ...wishes });
    },
    cancel: task.cancel,
    show(which) {
      if (task.show(which)) adjusting.forget();
    },
    backToPlanner: adjusting.back,
    take() {
      adjusting.commit();
      const taken = takeAnswer(task.state, parts.home(), question(), parts.engine());
      const problem = 'problem' in taken ? taken.problem : parts.run(taken.edit);
      if (!problem) task.leave();
      return problem;
    },
    leave: task.leave,
    get prices() {
      return prices.state;
    },
    askPrices() {
      const known = fitted();
      if (known) prices.start(parts.home(), known, task.state.wishes);
    },
    cancelPrices: prices.cancel,
    check() {
      task.check(parts.home(), fitted());
      prices.check(parts.home(), fitted());
      onEntry.look();
    },
    get waits() {
      return onEntry.due && isOpen();
    },
    follow(view) {
      if (view.round !== round) {
        round = view.round;
        // An answer of another round says nothing of this one; what was wished for holds.
        task.leave(task.state.wishes);
        prices.leave();
      }
      onEntry.follow(view);
    },
    restart(view) {
      round = view.round;
      task.leave();
      prices.leave();
      onEntry.restart(view);
    },
    end() {
      task.end();
      prices.end();
    },
  };

  const isOpen = () => {
    const { state, proposal } = task.state;
    // What was taken is told first; whoever wants another answer asks for it.
    const { assessment } = parts.results();
    return (
      state === 'idle' &&
      !proposal &&
      assessment?.sinceFound === null &&
      Object.values(parts.home().pieces).some((piece) => !piece.locked && piece.uses.length > 0)
    );
  };
  /** The map is the last word on the home as it stands, in the round that is shown. */
  const isMapped = () => {
    const { request, stale, sampling } = parts.results();
    if (stale || sampling !== null) return false;
    return sameValue(request, assessQuestion(parts.home(), { round: parts.view().round }));
  };
  const onEntry = createArrangeOnEntry(
    () => isOpen() && isMapped(),
    () => arranging.ask(),
  );
  return arranging;
}
