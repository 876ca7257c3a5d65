import type { BrokenRule } from '../engine/arranging/rules';
import type { Put } from '../engine/arranging/place';
import type { RuleBook, RuleQuestion } from '../engine/arranging/ruleBook';
import type { PieceDose } from '../engine/assess';
import type { Home, Id, Piece, Ref } from '../home/home';
import { ruleQuestion } from '../home/questions/arrangeQuestion';
import { goodQuestion } from '../home/questions/goodQuestion';
import { handQuestion } from '../home/questions/handQuestion';
import { openPlan } from '../home/questions/openPlan';
import type { Here } from './compute/loadHere';
import { createGoodTask } from './compute/goodTask';
import type { AtHand, Broken, ProposalState, Results, View } from './editor';
import { homeShown } from './homeShown';
import { keepLast } from './keepLast';
import { sameValue } from '../engine/sameValue';
import type { Services } from './services';
import { shownAnswer } from './shownAnswer';
import type { Topics } from './topics';

interface Parts {
  services: Pick<Services, 'arrangeFactory'>;
  home(): Home;
  view(): View;
  selection(): readonly Ref[];
  proposal(): ProposalState;
  results(): Results;
  engine(): Here | null;
  /** A hand is moving something, and may go on. */
  carrying(): boolean;
  topics: Topics;
}

/** A piece in the hand, and what the session shows of it. */
export interface Hand {
  readonly atHand: AtHand | null;
  /** The rules that pieces break where they are shown. */
  readonly broken: Broken;
  end(): void;
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

  /** Where the answer that is looked at has moved a piece to. */
  const ghostOf = (id: Id) => shownAnswer(parts.proposal())?.pieces.find((one) => one.id === id && one.moves);
  const judged = (id: Id): PieceDose | null => {
    const { live, stale, assessment } = parts.results();
    if (live[id]) return live[id];
    return (!stale && assessment?.pieces.find((one) => one.id === id)) || null;
  };
  const isUnsupported = (id: Id): boolean =>
    ghostOf(id)?.breaks.some(({ kind }) => kind === 'unsupported') ?? judged(id)?.supported === false;
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

  const good = createGoodTask(parts.services, () => parts.topics.tell('atHand'));
  let last: ({ put: Put; which: ProposalState['shown'] } & Pick<ProposalState, 'proposal'>) | null = null;
  let told = false;

  /** Home, map, selection or the answer looked at may be others. */
  const follow = () => {
    const held = piece();
    const { assessment } = parts.results();
    const { proposal, shown: which, wishes } = parts.proposal();
    const isUsed = held?.uses.some(({ hours }) => hours > 0);
    good.ask(assessment && held && isUsed ? goodQuestion(home(), held, assessment.fitted, wishes) : null);

    const put = held && putOf(held);
    const isSame = last && last.put.id === put?.id && last.proposal === proposal && last.which === which;
    if (!isSame || parts.carrying()) told = false;
    else if (!sameValue(last!.put, put)) told = true;
    last = put && { put, proposal, which };
  };
  for (const topic of ['home', 'view', 'selection', 'results', 'proposal'] as const)
    parts.topics.subscribe(topic, follow);

  return {
    get atHand() {
      const held = piece();
      const engine = parts.engine();
      if (!held || !engine) return null;
      const { broken, shapes } = look(handBook(engine, held), held);
      const ghost = ghostOf(held.id);
      return {
        id: held.id,
        put: putOf(held),
        broken: withMap(held.id, broken),
        shapes,
        dose: ghost ? ghost.after : (judged(held.id)?.dose ?? null),
        told: told || parts.carrying(),
        area: good.area,
      };
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
    end: good.end,
  };
}
