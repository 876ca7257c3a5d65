import type { BrokenRule } from '../engine/arranging/rules';
import type { Put } from '../engine/arranging/place';
import type { RuleBook, RuleQuestion } from '../engine/arranging/ruleBook';
import type { Home, Id, Piece } from '../home/home';
import { ruleQuestion } from '../home/questions/arrangeQuestion';
import { handQuestion } from '../home/questions/handQuestion';
import { openPlan } from '../home/questions/openPlan';
import type { Here } from './compute/loadHere';
import type { AtHand, Broken, ProposalState, Results, View } from './editor';
import type { Ref } from '../home/home';
import { homeShown } from './homeShown';
import { keepLast } from './keepLast';
import { sameValue } from './sameValue';
import { shownAnswer } from './shownAnswer';

interface Parts {
  home(): Home;
  view(): View;
  selection(): readonly Ref[];
  proposal(): ProposalState;
  results(): Results;
  engine(): Here | null;
  /** A hand is moving something, and may go on. */
  carrying(): boolean;
}

export interface Hand {
  readonly atHand: AtHand | null;
  /** The rules that pieces break where they are shown. */
  readonly broken: Broken;
}

const NONE: Broken = {};

const putOf = ({ id, level, at, angle }: Piece): Put => ({ id, level, at, angle });

/** The one piece that is selected where furniture is arranged: how it stands, and what can be said of its place. */
export function createHand(parts: Parts): Hand {
  const shownHome = keepLast(
    (
      home: Home,
      proposal: ProposalState['proposal'],
      shown: ProposalState['shown'],
      adjusted: ProposalState['adjusted'],
      open: boolean,
    ) => {
      const shownHome = homeShown(home, { proposal, shown, adjusted });
      return open ? openPlan(shownHome) : shownHome;
    },
  );
  const home = () => {
    const { proposal, shown, adjusted, wishes } = parts.proposal();
    return shownHome(parts.home(), proposal, shown, adjusted, proposal !== null && wishes.open === true);
  };

  let known: { question: RuleQuestion; book: RuleBook } | null = null;
  /** The rules for a piece that is carried about: worked out once for the whole way. */
  const handBook = (engine: Here, piece: Piece): RuleBook => {
    const question = handQuestion(home(), piece);
    if (!known || !sameValue(known.question, question)) known = { question, book: engine.ruleBook(question) };
    return known.book;
  };
  const look = keepLast((book: RuleBook, piece: Piece) => book.look(putOf(piece)));

  const isUnsupported = (id: Id): boolean => {
    const placed = shownAnswer(parts.proposal())?.pieces.find((one) => one.id === id);
    if (placed?.moves) return placed.breaks.some(({ kind }) => kind === 'unsupported');
    const { live, assessment } = parts.results();
    return (live[id] ?? assessment?.pieces.find((one) => one.id === id))?.supported === false;
  };
  const withMap = (id: Id, broken: readonly BrokenRule[]): readonly BrokenRule[] =>
    isUnsupported(id) ? [{ kind: 'unsupported', with: null }, ...broken] : broken;

  /** Every piece that breaks a rule of the plan. While one is carried the others are not looked at again. */
  const atRest = keepLast(
    (
      engine: Here,
      rooms: Home['rooms'],
      openings: Home['openings'],
      fixtures: Home['fixtures'],
      pieces: Home['pieces'],
      settings: Home['settings'],
    ): Broken => {
      const question = ruleQuestion({ ...home(), rooms, openings, fixtures, pieces, settings });
      const book = engine.ruleBook(question);
      return Object.fromEntries(Object.values(pieces).map((piece) => [piece.id, book.broken(putOf(piece))]));
    },
  );
  let rested = NONE;

  const piece = (): Piece | null => {
    const [ref, ...others] = parts.selection();
    if (!ref || others.length > 0 || ref.kind !== 'piece' || parts.view().stage !== 'arrange') return null;
    return home().pieces[ref.id] ?? null;
  };

  return {
    get atHand() {
      const held = piece();
      const engine = parts.engine();
      if (!held || !engine) return null;
      const { broken, shapes } = look(handBook(engine, held), held);
      return { id: held.id, put: putOf(held), broken: withMap(held.id, broken), shapes };
    },
    get broken() {
      const engine = parts.engine();
      if (!engine || parts.view().stage !== 'arrange') return NONE;
      if (!parts.carrying()) {
        const { rooms, openings, fixtures, pieces, settings } = home();
        rested = atRest(engine, rooms, openings, fixtures, pieces, settings);
      }
      const held = this.atHand;
      const all = Object.entries(held ? { ...rested, [held.id]: held.broken } : rested);
      return Object.fromEntries(
        all.flatMap(([id, rules]) => {
          const broken = id === held?.id ? rules : withMap(id, rules);
          return broken.length > 0 ? [[id, broken]] : [];
        }),
      );
    },
  };
}
