import type { GoodArea } from '../../engine/arranging/goodArea';
import type { GoodQuestion } from '../../home/questions/goodQuestion';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';

export interface GoodTask {
  /** What is known of the piece asked about; while it turns, of the angle before. */
  readonly area: GoodArea | null;
  /** From now on this is asked, or nothing: an answer that is known is there at once. */
  ask(question: GoodQuestion | null): void;
  end(): void;
}

/** So many answers are remembered: a piece that is turned back, or picked up again, has its area at once. */
const KEPT = 4;

/**
 * Works out where a piece has its least doses, in a worker of its own, so that an arrangement can be planned meanwhile. One
 * question at a time: of those that come while it works only the last is asked.
 */
export function createGoodTask(
  { arrangeFactory }: Pick<Services, 'arrangeFactory'>,
  changed: () => void,
): GoodTask {
  const client = createEngineClient(arrangeFactory);
  /** The latest first. */
  let known: { question: GoodQuestion; area: GoodArea }[] = [];
  let wanted: GoodQuestion | null = null;
  let shown: { question: GoodQuestion; area: GoodArea } | null = null;

  const show = (next: typeof shown) => {
    if (next === shown) return;
    shown = next;
    changed();
  };

  const look = () => {
    const question = wanted;
    if (!question) return show(null);
    const found = known.find((one) => sameValue(one.question, question));
    if (found) {
      known = [found, ...known.filter((one) => one !== found)];
      return show(found);
    }
    if (shown && shown.question.id !== question.id) show(null);
    if (client.busy) return;
    client.put('good', question, {
      done(area) {
        known = [{ question, area }, ...known].slice(0, KEPT);
        look();
      },
      // Nothing is painted then, and the rest of the page goes on.
      problem: () => show(null),
    });
  };

  return {
    get area() {
      return shown?.area ?? null;
    },
    ask(question) {
      const isSame = sameValue(question, wanted);
      // A map drawn again is another object with the same in it: kept, so that the next frame need not walk it.
      wanted = question;
      if (!isSame) look();
    },
    end: () => client.cancel(),
  };
}
