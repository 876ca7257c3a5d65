import { describe, expect, it } from 'vitest';
import { answersAt } from '../../src/engine/arranging/answer';
import { fieldsOf } from '../../src/engine/dose/fieldAt';
import { random } from '../../src/engine/algebra/random';
import { homeShown } from '../../src/editor/homeShown';
import type { Point } from '../../src/home/home';
import { arrangeQuestion } from '../../src/home/questions/arrangeQuestion';
import { answer, placeOf, proposed, state } from '../support/proposed';

/** To ten digits: sums may be taken in another order. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_, v: unknown) => (typeof v === 'number' ? Number(v.toPrecision(10)) : v)),
  );

describe('any hand at all upon an answer', () => {
  it.each([21, 22, 23, 24])(
    'seed %i: the home stays as it is, all is worth what its places are worth, and undo leads back',
    async (seed) => {
      const chance = random(seed);
      const driver = await proposed();
      const { editor, planner } = driver;
      const { home } = editor;
      const planned = answer(driver);
      const pick = <T>(from: readonly T[]) => from[Math.floor(chance.next() * from.length)]!;
      const near = ([x, y]: Point, far: number): Point => [
        x + far * (chance.next() - 0.5),
        y + far * (chance.next() - 0.5),
      ];
      for (let step = 0; step < 60; step += 1) {
        const dice = chance.next();
        const ghosts = answer(driver).pieces.filter(({ moves }) => moves);
        if (dice < 0.45 && ghosts.length > 0) {
          const from = near(pick(ghosts).at, 0.3);
          // Only what is pressed on a ghost stays in the answer.
          editor.select([]);
          driver.hover(from);
          if (editor.hover?.kind !== 'piece' || !ghosts.some(({ id }) => id === editor.hover!.id)) continue;
          driver.drag([from, near(from, 1), near(from, 4)], {
            alt: chance.next() < 0.3,
            hold: chance.next() < 0.2,
          });
          if (chance.next() < 0.5) driver.key('Escape');
          driver.lift(from);
        } else if (dice < 0.7) {
          editor.select([{ kind: 'piece', id: pick(['p1', 'p2']) }]);
          driver.key(pick(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'r']), {
            shift: chance.next() < 0.5,
          });
        } else if (dice < 0.8) editor.undo();
        else if (dice < 0.9) editor.redo();
        else if (dice < 0.93) editor.arranging.backToPlanner();
        else planner.work();
        expect(editor.home).toBe(home);
      }
      planner.work();
      const question = arrangeQuestion(home, editor.results.assessment!.fitted, state(driver).wishes);
      const now = answer(driver);
      if (now !== planned) {
        expect(state(driver).adjusted!.judging).toBe(false);
        const puts = now.pieces.map((piece) => ({ id: piece.id, ...placeOf(piece) }));
        expect(rounded(now)).toEqual(rounded(answersAt(question, fieldsOf(question.fitted))(puts)));
        for (const { id, moves, at } of now.pieces)
          expect(homeShown(home, state(driver)).pieces[id]!.at).toEqual(moves ? at : home.pieces[id]!.at);
      }
      while (editor.canUndo) editor.undo();
      expect(answer(driver)).toBe(planned);
      expect(editor.home).toBe(home);
    },
  );
});
