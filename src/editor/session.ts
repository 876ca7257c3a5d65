import type { Home, Id, Point, Ref } from '../home/home';
import { firstOf } from '../home/order';
import type { Notice, Stage, View } from './editor';
import type { UnmarkedSource } from '../engine/mapping/sourceSampling/unmarkedSources';
import { sameRef, thingOf } from './things';
import type { Topics } from './topics';

/** What belongs to the sitting and not to the home: it is neither saved nor taken back by undo. */
export interface Session {
  readonly view: View;
  readonly selection: readonly Ref[];
  readonly hover: Ref | null;
  readonly litBand: number | null;
  readonly notice: Notice | null;
  readonly readingPlace: Point | null;
  /** What a field or a row speaks of. */
  readonly pointed: readonly Point[] | null;
  /** The likely unmarked source that is looked at; nothing is selected meanwhile. */
  readonly suspect: UnmarkedSource | null;
  setStage(stage: Stage): void;
  setLevel(level: Id): void;
  setRound(round: Id): void;
  select(refs: readonly Ref[]): void;
  hoverOver(ref: Ref | null): void;
  lightBand(band: number | null): void;
  say(notice: Notice | null): void;
  setReadingPlace(at: Point | null): void;
  pointOut(path: readonly Point[] | null): void;
  chooseSuspect(suspect: UnmarkedSource | null): void;
  /** Lets go of what the home no longer holds. */
  follow(home: Home): void;
  /** Another home is on the desk. */
  restart(home: Home): void;
}

const startView = (home: Home, stage: Stage): View => ({
  stage,
  level: firstOf(home.levels)?.id ?? '',
  round: firstOf(home.rounds)?.id ?? '',
});

export function createSession(start: Home, topics: Topics): Session {
  let view = startView(start, 'sketch');
  let selection: readonly Ref[] = [];
  let hover: Ref | null = null;
  let litBand: number | null = null;
  let notice: Notice | null = null;
  let readingPlace: Point | null = null;
  let pointed: Session['pointed'] = null;
  let suspect: Session['suspect'] = null;

  const setView = (change: Partial<View>) => {
    const next = { ...view, ...change };
    if (next.stage === view.stage && next.level === view.level && next.round === view.round) return;
    const moved = next.level !== view.level || next.round !== view.round;
    view = next;
    topics.tell('view');
    if (moved) {
      session.select([]);
      session.hoverOver(null);
      session.setReadingPlace(null);
    }
  };

  const session: Session = {
    get view() {
      return view;
    },
    get selection() {
      return selection;
    },
    get hover() {
      return hover;
    },
    get litBand() {
      return litBand;
    },
    get notice() {
      return notice;
    },
    get readingPlace() {
      return readingPlace;
    },
    get pointed() {
      return pointed;
    },
    get suspect() {
      return suspect;
    },
    setStage: (stage) => setView({ stage }),
    setLevel: (level) => setView({ level }),
    setRound: (round) => setView({ round }),
    select(refs) {
      const isSame = refs.length === selection.length && refs.every((ref, i) => sameRef(ref, selection[i]!));
      if (isSame && !suspect) return;
      if (!isSame) selection = refs;
      suspect = null;
      topics.tell('selection', 'overlay');
    },
    hoverOver(ref) {
      if (sameRef(ref, hover)) return;
      hover = ref;
      topics.tell('selection');
    },
    lightBand(band) {
      if (band === litBand) return;
      litBand = band;
      topics.tell('selection');
    },
    say(next) {
      if (next === notice) return;
      notice = next;
      topics.tell('notice');
    },
    setReadingPlace(at) {
      if (at === readingPlace) return;
      readingPlace = at;
      topics.tell('overlay', 'selection');
    },
    pointOut(next) {
      pointed = next;
      topics.tell('overlay');
    },
    chooseSuspect(next) {
      if (next === suspect) return;
      session.select([]);
      suspect = next;
      topics.tell('selection', 'overlay');
    },
    follow(home) {
      if (!home.levels[view.level]) setView({ level: startView(home, view.stage).level });
      if (!home.rounds[view.round]) setView({ round: startView(home, view.stage).round });
      if (selection.some((ref) => !thingOf(home, ref)))
        session.select(selection.filter((ref) => thingOf(home, ref)));
      if (hover && !thingOf(home, hover)) session.hoverOver(null);
    },
    restart(home) {
      // A bare sheet has nothing to show at a later stage.
      const isBare = Object.keys(home.rooms).length === 0 && Object.keys(home.readings).length === 0;
      view = startView(home, isBare ? 'sketch' : view.stage);
      selection = [];
      hover = null;
      suspect = null;
      litBand = null;
      readingPlace = null;
      topics.tell('view', 'selection', 'overlay');
    },
  };
  return session;
}
