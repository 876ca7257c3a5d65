import { doseOver, type ZoneDose } from '../dose/dose';
import { fieldsOf, type FieldAt } from '../dose/fieldAt';
import { oddsBetween, type SumsOfDraw } from '../dose/overDraws';
import { peopleOf } from '../dose/pieceDose';
import { staysOf } from '../arranging/compare';
import { isUnchanged, type SourceChange } from './sourceChange';
import { whatIf, type WithoutSources } from './whatIf';
import { zoneMeans, type MeansOfStays } from '../dose/zoneMeans';
import type { ArrangePiece } from '../arranging/request';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Place, Put } from '../arranging/place';

/** Where pieces stand, and what becomes of sources; pieces that are not named stand as they do now. */
interface AskedArrangement {
  id: string;
  places: readonly Put[];
  sources: readonly SourceChange[];
}

/** What is asked of arrangements. Plain data: it crosses to the worker and comes from the CLI. */
export interface CompareRequest {
  fitted: FittedSurvey;
  pieces: readonly ArrangePiece[];
  /** The first is the one that the others are held against. */
  arrangements: readonly AskedArrangement[];
}

/** Probability that a dose is lower than in the first arrangement; null where nothing differs, or the map cannot tell. */
type Odds = number | null;

/** Doses of one arrangement, µT·h a day. */
export interface ArrangementWorth {
  id: string;
  /** Mean over the home's people; null where nobody uses a piece. */
  whole: ZoneDose | null;
  odds: Odds;
  people: { who: string; dose: ZoneDose; odds: Odds }[];
  /** Mean over those who use it; pieces that nobody uses are not listed. */
  pieces: { id: string; dose: ZoneDose }[];
  /** Changed sources to which the map gives nothing. */
  unheard: string[];
  /** Odds are left out since the map without the sources and the map with them are not known together. */
  apart: boolean;
}

/** `without`: the map knows no sources, and nothing can be said of those that are changed. */
export type ComparedArrangement = ArrangementWorth | { id: string; without: WithoutSources };

interface Day {
  who: string;
  piece: string;
  hours: number;
}

/** One arrangement's map. */
interface Field {
  fieldAt: FieldAt;
  fitted: FittedSurvey;
  unheard: string[];
}

/**
 * What each of some arrangements is worth, and how likely it is lower than the first: doses of the estimate's own draws; odds by what
 * the two share in each draw (see `oddsBetween`), with doubts that leave-one-out agrees with. Odds between a map as it is and as it
 * would be with other sources come from samples only, which have both.
 */
export function compareArrangements({ fitted, pieces, arrangements }: CompareRequest): ComparedArrangement[] {
  const known = new Map<string, Field | WithoutSources>();
  const fieldFor = (arrangement: AskedArrangement): Field | WithoutSources => {
    const sources = arrangement.sources.filter((change) => !isUnchanged(change));
    const key = JSON.stringify(sources);
    const made = known.get(key);
    if (made) return made;
    const then = whatIf(fitted, sources);
    const field = then.ok
      ? { fitted: then.fitted, fieldAt: fieldsOf(then.fitted), unheard: then.unheard }
      : then.problem;
    known.set(key, field);
    return field;
  };
  const first = arrangements[0];
  const firstField = first && fieldFor(first);
  return arrangements.map((arrangement) => {
    const field = fieldFor(arrangement);
    if ('kind' in field) return { id: arrangement.id, without: field };
    const base = firstField && !('kind' in firstField) && arrangement !== first ? firstField : null;
    return worthOf(pieces, arrangement, field, base && { arrangement: first, field: base });
  });
}

function worthOf(
  pieces: readonly ArrangePiece[],
  arrangement: AskedArrangement,
  field: Field,
  base: { arrangement: AskedArrangement; field: Field } | null,
): ArrangementWorth {
  const at = ({ places }: AskedArrangement) =>
    pieces.flatMap((piece) => {
      const place: Place = places.find(({ id }) => id === piece.id) ?? piece;
      return staysOf(piece, place).map((stay) => ({ ...stay, piece: piece.id }));
    });
  const now = base ? at(base.arrangement) : [];
  const then = at(arrangement);
  const all = [...now, ...then];
  const means = all.length > 0 ? meansOf(field, all) : null;
  const isSameMap = !base || base.field.fitted === field.fitted;
  const apart = !isSameMap && !(base.field.fitted.sampled && field.fitted.sampled);
  const baseMeans = base && all.length > 0 && !isSameMap && !apart ? meansOf(base.field, all) : null;
  const people = [...new Set(then.map(({ who }) => who))].sort();

  /** Hours of the days that count, at the places of the first arrangement or at this one's. */
  const row = (counts: (day: Day) => boolean, when: 'now' | 'then') =>
    all.map((day, i) => (i < now.length === (when === 'now') && counts(day) ? day.hours : 0));
  const doseOf = (counts: (day: Day) => boolean, count: number): ZoneDose =>
    doseOver(means!, row(counts, 'then'), count);
  const oddsOf = (counts: (day: Day) => boolean): Odds => {
    if (!base || apart) return null;
    if (isSameMap && JSON.stringify(now.filter(counts)) === JSON.stringify(then.filter(counts))) return null;
    const rows = [row(counts, 'now'), row(counts, 'then')];
    if (rows.some((hours) => hours.every((own) => own === 0))) return null;
    const draws = means!.widened(rows);
    return oddsBetween(baseMeans ? acrossMaps(baseMeans.widened(rows), draws) : draws, 0, 1);
  };
  const isUsed = then.some(({ hours }) => hours > 0);
  return {
    id: arrangement.id,
    whole: isUsed ? doseOf(() => true, people.length) : null,
    odds: isUsed ? oddsOf(() => true) : null,
    people: people.map((who) => ({
      who,
      dose: doseOf((day) => day.who === who, 1),
      odds: oddsOf((day) => day.who === who),
    })),
    pieces: pieces
      .filter(({ uses }) => uses.length > 0)
      .map(({ id, uses }) => ({ id, dose: doseOf((day) => day.piece === id, peopleOf(uses)) })),
    unheard: field.unheard,
    apart: base !== null && apart,
  };
}

const meansOf = (
  { fieldAt, fitted }: Field,
  stays: Parameters<ReturnType<typeof zoneMeans>>[0],
): MeansOfStays => zoneMeans(fieldAt, fitted)(stays);

/**
 * The first sum as one map has it and the second as another has it, draw by draw: the same samples made both. Within a draw what
 * is doubted is the remainder, which both have alike, so that they share what they would share on one map.
 */
const acrossMaps = (one: readonly SumsOfDraw[], other: readonly SumsOfDraw[]): SumsOfDraw[] =>
  one.map(({ weight, ln, covariance }, s) => {
    const [before, after] = [covariance[0][0], other[s].covariance[1][1]];
    // No more is shared than there is.
    const shared = Math.min(covariance[0][1], Math.sqrt(before * after));
    return {
      weight,
      ln: [ln[0], other[s].ln[1]],
      covariance: [
        [before, shared],
        [shared, after],
      ],
    };
  });
