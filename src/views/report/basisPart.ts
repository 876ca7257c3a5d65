import type { AssessRequest, Assessment } from '../../engine/assess';
import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { Profile } from '../../engine/judging/profile';
import { fileName } from '../../editor/storage/fileName';
import type { Home, Id } from '../../home/home';
import { inOrder } from '../../home/order';
import { roomAt } from '../../home/questions/roomAt';
import {
  alikeSentence,
  basisWords as words,
  cautiousSentence,
  oddsSentence,
  edgeRows,
  fileSentence,
  formulaSentences,
  placesText,
  roundTitle,
  setTitle,
} from '../../words/basis';
import { pieceLetters } from '../../words/canvas';
import { doseText, doseUnitName, fieldText, fixedText, intervalText, unitName } from '../../words/numbers';
import { pieceShort } from '../../words/canvas';
import { meterOf, readingNotes } from '../../words/report';
import { furnitureName, ROOM_USES, roomName, SOURCE_WORDS, thingName } from '../../words/things';
import { readingsOf } from './planDrawing';
import { readingTable } from './readingTable';
import type { Table } from './table';

/** A table with its title, and what is to be said under it. */
export interface Titled {
  title: string;
  table: Table;
  note: string;
}

/** All that a colleague needs to work the report's numbers out again. */
export interface BasisPart {
  file: string;
  steps: string[];
  tables: Titled[];
  /** Listed in full, in type as small as the readings'. */
  rounds: Titled[];
}

const right = true as const;

export function basisPart(
  home: Home,
  round: Id,
  assessment: Assessment | null,
  request: AssessRequest | null,
  cautious: boolean | null,
): BasisPart {
  const tables: (Titled | null)[] = [
    piecesTable(home),
    sourcesTable(home),
    levelsTable(home, round, request),
    cornersTable(home),
  ];
  const steps = [...new Set((request?.levels ?? []).map(({ step }) => step))];
  return {
    file: fileSentence(home.title, fileName(home.title), home.report.date, round),
    steps: [
      ...(assessment ? formulaSentences(home, assessment, steps) : []),
      ...(cautious === null || !assessment
        ? []
        : [oddsSentence(assessment.fitted.meanSquareZ), cautiousSentence(cautious)]),
    ],
    tables: tables.filter((one) => one !== null),
    rounds: inOrder(home.rounds)
      .filter(({ id }) => id !== round)
      .map(({ id }) => roundListed(home, id))
      .filter(({ table }) => table.rows.length > 0),
  };
}

/** Who gets how much where things stand now, whether or not anything was arranged; null where nobody uses anything. */
export function dosesTable(home: Home, { pieces }: Assessment): Table | null {
  const unit = home.settings.fieldUnit;
  const rows = pieces.flatMap(({ id, mean, dose, uses, supported }) => {
    const piece = home.pieces[id];
    if (!piece) return [];
    const room = roomAt(home, piece.level, piece.at);
    const place = [pieceShort(home, id), room ? roomName(home, room.id) : '—'];
    const figures = (field: number, one: typeof dose) => [
      fieldText(field, unit),
      doseText(one.dose, unit),
      intervalText(one.low, one.high, unit),
      supported ? '' : words.notDrawn,
    ];
    const own = uses.map(({ who, dose: one }, i) => {
      const { side, hours } = piece.uses[i]!;
      return [...place, who || '—', words.side[side], fixedText(hours, 1), ...figures(one.mean, one)];
    });
    return uses.length > 1 ? [...own, [...place, words.allUsers, '', '', ...figures(mean, dose)]] : own;
  });
  if (rows.length === 0) return null;
  return {
    heads: [
      { text: 'piece' },
      { text: 'stands in' },
      { text: words.use },
      { text: 'side' },
      { text: 'hours', right },
      { text: `mean, ${unitName(unit)}`, right },
      { text: doseUnitName(unit), right, strong: true },
      { text: '90\u2009% interval', right },
      { text: '' },
    ],
    rows,
  };
}

function piecesTable(home: Home): Titled | null {
  const letters = pieceLetters(home);
  const pieces = inOrder(home.pieces);
  if (pieces.length === 0) return null;
  return {
    title: words.pieces,
    note: '',
    table: {
      heads: [
        { text: 'piece' },
        { text: words.level },
        { text: 'x, m', right },
        { text: 'y, m', right },
        { text: 'angle, °', right },
        { text: 'width × length, m', right },
        { text: 'height, m', right },
      ],
      rows: pieces.map((piece) => [
        [furnitureName(home, piece.id), letters[piece.id]].filter(Boolean).join(' '),
        home.levels[piece.level]!.name,
        fixedText(piece.at[0], 2),
        fixedText(piece.at[1], 2),
        fixedText(piece.angle, 0),
        piece.size.map((one) => fixedText(one, 2)).join(' × '),
        fixedText(piece.height, 2),
      ]),
    },
  };
}

function sourcesTable(home: Home): Titled | null {
  const sources = inOrder(home.sources);
  if (sources.length === 0) return null;
  return {
    title: words.sources,
    note: '',
    table: {
      heads: [
        { text: 'source' },
        { text: 'kind' },
        { text: words.level },
        { text: 'x, y of its places, m' },
        { text: 'height, m', right },
        { text: 'falls as', right },
        { text: 'from' },
      ],
      rows: sources.map((source) => [
        thingName(home, { kind: 'source', id: source.id }),
        SOURCE_WORDS[source.kind].toLowerCase(),
        home.levels[source.level]!.name,
        placesText(source.path),
        fixedText(source.height, 2),
        words.falloff(source.falloff),
        words.origin[source.origin],
      ]),
    },
  };
}

function levelsTable(home: Home, round: Id, request: AssessRequest | null): Titled {
  return {
    title: words.levels,
    note: '',
    table: {
      heads: [
        { text: words.level },
        { text: 'its floor at, m', right },
        { text: 'map above it, m', right },
        { text: 'cells, m', right },
        { text: 'readings', right },
      ],
      rows: inOrder(home.levels).map(({ id, name, elevation }) => {
        const drawn = request?.levels.find((level) => level.id === id);
        return [
          name,
          fixedText(elevation, 2),
          fixedText(drawn?.height ?? home.settings.mapHeight, 2),
          drawn ? fixedText(drawn.step, 1) : '—',
          fixedText(readingsOf(home, id, round).length, 0),
        ];
      }),
    },
  };
}

function cornersTable(home: Home): Titled | null {
  const rooms = inOrder(home.rooms);
  if (rooms.length === 0) return null;
  return {
    title: words.rooms,
    note: '',
    table: {
      heads: [{ text: 'room' }, { text: words.level }, { text: 'use' }, { text: 'x, y of each corner' }],
      rows: rooms.map((room) => [
        roomName(home, room.id),
        home.levels[room.level]!.name,
        ROOM_USES[room.use],
        placesText(room.outline),
      ]),
    },
  };
}

/** The readings of a round that the maps do not show, all levels together. */
function roundListed(home: Home, round: Id): Titled {
  const readings = inOrder(home.levels).flatMap(({ id }) => readingsOf(home, id, round));
  const said = readings.length > 0 ? [alikeSentence(home, readings, onlyMeter(home, readings))] : [];
  const { note } = home.rounds[round]!;
  return {
    title: roundTitle(home, round),
    table: readingTable(home, readings),
    note: [...said, note, ...readingNotes(readings, home.settings.fieldUnit)].filter(Boolean).join(' '),
  };
}

/** The name of the meter where all readings were taken with one. */
export function onlyMeter(home: Home, readings: Parameters<typeof meterOf>[1][]): string | null {
  const meters = new Set(readings.map((reading) => meterOf(home, reading)?.id));
  return meters.size === 1 ? meterOf(home, readings[0]!)?.name || null : null;
}

/** The edges of the set that rooms were judged by, with their words. */
export const edgesTable = (set: GuidelineSet, home: Home): Titled => ({
  title: setTitle(set),
  note: '',
  table: {
    heads: [{ text: words.edges(home.settings.fieldUnit), right, strong: true }, { text: words.word }],
    rows: edgeRows(set, home.settings.fieldUnit),
  },
});

/** Profiles that can be drawn: those of a walk that goes somewhere. */
export const drawnProfiles = (home: Home, assessment: Assessment | null): Profile[] =>
  (assessment?.profiles ?? []).filter(({ walk, rows }) => home.walks[walk] && rows.length > 1);
