import type { Answer, PlacedPiece } from '../engine/arranging/arrange';
import { isElsewhere, type Place, type Put } from '../engine/arranging/place';
import type { RulesAt } from '../engine/arranging/brokenRules';
import type { Edit } from '../home/edits/edit';
import type { Home, Id, Point, Ref } from '../home/home';
import { roomAt } from '../home/questions/roomAt';
import type { Problem } from '../home/problem';
import { createAdjustingSteps } from './adjustingSteps';
import type { Adjusted, ProposalState, View } from './editor';
import { homeShown } from './homeShown';
import { hitTest } from './input/hitTest';
import { plannersAnswer, shownAnswer } from './shownAnswer';
import { tryEdit } from './store';
import type { Subject } from './tools/tool';

interface Parts {
  home(): Home;
  view(): View;
  state(): ProposalState;
  /** The step of the home's history that stands last. */
  lastStep(): unknown;
  /** Tells every rule that a piece of the answer breaks where it is put; null while nobody can. */
  rules(): RulesAt | null;
  put(adjusted: Adjusted | null): void;
  /** There is a step more to take back. */
  stepped(): void;
  say(problem: Problem): void;
}

/** The answer that is looked at as something a hand can change, in steps of its own. The home stays as it is. */
export interface Adjusting extends Subject {
  /** A gesture is under way. */
  readonly open: boolean;
  /**
   * Whether the hand may put a thing elsewhere in the answer: a piece that the answer has on the level shown, while it answers
   * the home as it stands.
   */
  has(ref: Ref): boolean;
  /** The piece that the answer has at a point of the level shown. */
  at(at: Point, reach: number): Ref | null;
  /** Everything where the planner has it, as one step. */
  back(): void;
  /** Another answer is looked at: what was done to this one is no longer spoken of. */
  forget(): void;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** True where a step was taken back. */
  undo(): boolean;
  redo(): boolean;
}

export function createAdjusting(parts: Parts): Adjusting {
  const steps = createAdjustingSteps(parts.put);
  let gesture: { of: Answer | null; start: Home; before: Adjusted | null } | null = null;

  const step = (...made: Parameters<typeof steps.push>) => {
    steps.push(...made);
    parts.stepped();
  };

  const planners = () => plannersAnswer(parts.state());
  const adjusted = () => parts.state().adjusted;
  const shown = () => homeShown(parts.home(), parts.state());
  const mayChange = () => {
    const { state, stale } = parts.state();
    return parts.view().stage === 'arrange' && state === 'idle' && !stale && planners() !== null;
  };
  const moment = () => ({ of: planners(), last: parts.lastStep() });
  const placed = (id: Id) => shownAnswer(parts.state())?.pieces.find((piece) => piece.id === id);

  /** The answer with its pieces where another home has them. */
  const withPlacesOf = (home: Home): Adjusted | null => {
    const own = planners()!.pieces;
    const puts = own.map(({ id }) => putOf(home.pieces[id]!));
    const byHand = own.filter((piece, i) => isElsewhere(piece, puts[i]!)).map(({ id }) => id);
    if (byHand.length === 0) return null;
    const answer = shownAnswer(parts.state())!;
    const rules = parts.rules();
    const place = (piece: PlacedPiece): PlacedPiece => {
      const put = puts.find(({ id }) => id === piece.id)!;
      if (isSame(piece, put)) return piece;
      return {
        ...piece,
        ...put,
        room: roomAt(home, put.level, put.at)?.id ?? '',
        moves: isElsewhere(parts.home().pieces[piece.id]!, put),
        breaks: rules?.(put, puts) ?? piece.breaks,
      };
    };
    return { byHand, answer: { ...answer, pieces: answer.pieces.map(place) }, judging: true };
  };

  /** Puts the pieces where an edit has them that is made upon a home; false where it changes nothing. */
  const change = (upon: Home, edit: Edit): boolean => {
    const tried = tryEdit(upon, edit);
    if ('problem' in tried) {
      parts.say(tried.problem);
      return false;
    }
    const next = withPlacesOf(tried.change.home);
    if (stand(next, adjusted())) return false;
    parts.put(next);
    return true;
  };

  /** Whether every piece stands where it stood. */
  const stand = (now: Adjusted | null, before: Adjusted | null): boolean => {
    const [a, b] = [now, before].map((one) => (one?.answer ?? planners())?.pieces ?? []);
    return a!.every((piece, i) => isSame(piece, b![i]!));
  };

  const adjusting: Adjusting = {
    get home() {
      return shown();
    },
    get open() {
      return gesture !== null;
    },
    has: ({ kind, id }) => kind === 'piece' && mayChange() && placed(id)?.level === parts.view().level,
    at(at, reach) {
      if (!mayChange()) return null;
      const { pieces, ...rest } = shown();
      const own = Object.entries(pieces).filter(([id]) => placed(id));
      return hitTest({ ...rest, pieces: Object.fromEntries(own) }, parts.view(), at, reach, ['piece']);
    },
    run(edit) {
      const [at, before] = [moment(), adjusted()];
      if (change(shown(), edit)) step(at, before);
      return true;
    },
    mark() {
      adjusting.commit();
      gesture = { of: planners(), start: shown(), before: adjusted() };
    },
    redraw: (edit) => gesture !== null && gesture.of === planners() && change(gesture.start, edit),
    commit() {
      const was = gesture;
      gesture = null;
      if (!was || was.of !== planners()) return;
      if (stand(adjusted(), was.before)) parts.put(was.before);
      else step(moment(), was.before);
    },
    bail() {
      const was = gesture;
      gesture = null;
      if (was && was.of === planners()) parts.put(was.before);
    },
    back() {
      adjusting.commit();
      const before = adjusted();
      if (!before) return;
      parts.put(null);
      step(moment(), before);
    },
    forget: steps.clear,
    get canUndo() {
      return mayChange() && steps.canUndo(moment());
    },
    get canRedo() {
      return mayChange() && steps.canRedo(moment());
    },
    undo: () => adjusting.canUndo && steps.undo(adjusted()),
    redo: () => adjusting.canRedo && steps.redo(adjusted()),
  };
  return adjusting;
}

const putOf = ({ id, level, at, angle }: Put): Put => ({ id, level, at: [at[0], at[1]], angle });

const isSame = (a: Place, b: Place): boolean =>
  a.level === b.level && a.at[0] === b.at[0] && a.at[1] === b.at[1] && a.angle === b.angle;
