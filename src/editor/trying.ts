import type { ComparedArrangement } from '../engine/whatIf/compareArrangements';
import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import { isUnchanged, type SourceChange } from '../engine/whatIf/sourceChange';
import type { Home, Id, Point, Ref, Source } from '../home/home';
import { realChanges } from '../home/questions/arrangementRows';
import type { Problem } from '../home/problem';
import { createCompareTask } from './compute/compareTask';
import { createWhatIfTask } from './compute/whatIfTask';
import type { Results, View } from './editor';
import { hitTest } from './input/hitTest';
import { keepLast } from './keepLast';
import type { Services } from './services';
import { tryEdit } from './store';
import type { Subject } from './tools/tool';

/** The arrangements of a home beside each other; as found, or as it stands, comes first. */
export interface ComparedState {
  state: 'idle' | 'running';
  /** The last answer; it stays while a new one is worked out. */
  compared: readonly ComparedArrangement[] | null;
  stale: boolean;
  problem: Problem | null;
}

/** What is made of marked sources to see what would be. It is of this sitting: no home and no file knows of it. */
export interface Trying {
  /** Sources that are off, weaker or elsewhere; none: the map as it is. */
  readonly changes: readonly SourceChange[];
  /** What was asked of a source; one that is to be moved has a path, be it still where it is. */
  asked(id: Id): SourceChange;
  /** The map as it would be is being drawn. */
  readonly running: boolean;
  /** Changed sources to which the map gives nothing. */
  readonly unheard: readonly Id[];
  readonly problem: Problem | null;
  /** Fields not named stay as they are. A path of null puts a source back where it is. */
  change(id: Id, change: Partial<Omit<SourceChange, 'id'>>): void;
  /** All sources at once, as an arrangement has them. */
  set(changes: readonly SourceChange[]): void;
  /** The map as it is. */
  end(): void;
  readonly compared: ComparedState;
}

/** A source that is moved to see what would be, for the hand. */
export interface TriedSources extends Subject {
  has(ref: Ref): boolean;
  at(at: Point, reach: number): Ref | null;
}

interface Parts {
  services: Services;
  home(): Home;
  view(): View;
  /** What has been worked out from the readings. */
  measured(): Results;
  changed(): void;
  say(problem: Problem): void;
}

/** What the rest of the session tells it, and has of it. */
interface Follower {
  readonly hand: TriedSources;
  /** Results with the map as it would be in place of the one there is. */
  over(results: Results): Results;
  /** The survey as it would be; null where the map is as it is. */
  readonly fitted: FittedSurvey | null;
  /** Home, map or stage may be others. */
  follow(): void;
  restart(): void;
  stop(): void;
}

const NONE: readonly SourceChange[] = [];

/** Marked sources are switched off, weakened and moved, where furniture is arranged, to see what would be. */
export function createTrying(parts: Parts): Trying & Follower {
  /** As they were asked for; `changes` are those of them that change something. */
  let asked = NONE;
  let changes = NONE;
  /** The changes as they were when a hand took hold of a source. */
  let held: readonly SourceChange[] | null = null;
  const task = createWhatIfTask(parts.services, () => parts.changed());
  const compare = createCompareTask(parts.services, () => parts.changed());

  const put = (next: readonly SourceChange[]) => {
    asked = next.length > 0 ? next : NONE;
    const real = realChanges(parts.home(), asked);
    changes = real.length > 0 ? real : NONE;
    parts.changed();
    look();
  };
  const look = () => {
    const moving = held ? parts.view().level : null;
    task.follow(parts.measured(), changes, moving);
    if (!held) compare.follow(parts.home(), parts.measured(), changes);
  };
  const askedOf = (id: Id) => asked.find((one) => one.id === id) ?? { id, scale: 1, path: null };

  const over = keepLast((results: Results, supposed: typeof task.supposed, isBehind: boolean): Results => {
    const { assessment } = results;
    if (!assessment || !supposed) return results;
    const { fitted, pictures, pieces, sinceFound } = supposed;
    const all = assessment.pictures.map((old) => pictures.find(({ level }) => level === old.level) ?? old);
    return {
      ...results,
      stale: results.stale || isBehind,
      assessment: { ...assessment, fitted, pictures: all, pieces, sinceFound },
    };
  });

  const trying: Trying & Follower = {
    get changes() {
      return changes;
    },
    asked: askedOf,
    get running() {
      return task.running;
    },
    get unheard() {
      return task.supposed?.unheard ?? [];
    },
    get problem() {
      return task.problem;
    },
    change(id, change) {
      const then = { ...askedOf(id), ...change };
      put([...asked.filter((one) => one.id !== id), ...(isUnchanged(then) ? [] : [then])]);
    },
    set: (next) => put(next.filter((one) => !isUnchanged(one))),
    end: () => (asked === NONE ? undefined : put(NONE)),
    get compared() {
      return compare.state;
    },
    hand: createHand(parts, askedOf, {
      move: (id, path) => trying.change(id, { path }),
      hold() {
        held = asked;
      },
      letGo(isMeant) {
        const before = held;
        held = null;
        if (before && !isMeant) put(before);
        else look();
      },
    }),
    over: (results) => (changes === NONE ? results : over(results, task.supposed, task.stale)),
    get fitted() {
      return changes === NONE ? null : (task.supposed?.fitted ?? null);
    },
    follow() {
      const { sources } = parts.home();
      const left = parts.view().stage === 'arrange' ? asked.filter(({ id }) => sources[id]) : NONE;
      if (left.length < asked.length) return put(left);
      look();
    },
    restart() {
      asked = changes = NONE;
      held = null;
      task.leave();
      compare.leave();
      parts.changed();
    },
    stop() {
      task.end();
      compare.end();
    },
  };
  return trying;
}

interface Hold {
  move(id: Id, path: readonly Point[]): void;
  hold(): void;
  letGo(isMeant: boolean): void;
}

/** A moved source is dragged and nudged as things of the home are; what comes of it is tried, and the home stays. */
function createHand(
  parts: Pick<Parts, 'home' | 'view' | 'say'>,
  asked: (id: Id) => SourceChange,
  { move, hold, letGo }: Hold,
): TriedSources {
  const moved = ({ id, ...source }: Source): Source => {
    const path = asked(id).path;
    return path ? { ...source, id, path: path.map(([x, y]): Point => [x, y]) } : { ...source, id };
  };
  const homeTried = (): Home => {
    const home = parts.home();
    const sources = Object.entries(home.sources).map(([id, source]) => [id, moved(source)]);
    return { ...home, sources: Object.fromEntries(sources) };
  };
  let start: Home | null = null;
  const change = (upon: Home, edit: Parameters<Subject['run']>[0]): boolean => {
    const tried = tryEdit(upon, edit);
    if ('problem' in tried) {
      parts.say(tried.problem);
      return false;
    }
    const after = Object.values(tried.change.home.sources);
    const elsewhere = after.filter(
      (source) => hand.has({ kind: 'source', id: source.id }) && source !== upon.sources[source.id],
    );
    for (const { id, path } of elsewhere) move(id, path);
    return elsewhere.length > 0;
  };
  const end = (isMeant: boolean) => {
    if (!start) return;
    start = null;
    letGo(isMeant);
  };
  const hand: TriedSources = {
    get home() {
      return homeTried();
    },
    has: ({ kind, id }) => kind === 'source' && parts.view().stage === 'arrange' && asked(id).path !== null,
    at(at, reach) {
      const { sources, ...rest } = homeTried();
      const own = Object.entries(sources).filter(([id]) => hand.has({ kind: 'source', id }));
      if (own.length === 0) return null;
      return hitTest({ ...rest, sources: Object.fromEntries(own) }, parts.view(), at, reach, ['source']);
    },
    run(edit) {
      change(homeTried(), edit);
      return true;
    },
    redraw: (edit) => start !== null && change(start, edit),
    mark() {
      end(true);
      start = homeTried();
      hold();
    },
    commit: () => end(true),
    bail: () => end(false),
  };
  return hand;
}
