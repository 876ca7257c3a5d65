import type { Home, Reading } from '../../home/home';
import { basisWords, timeColumn } from '../../words/basis';
import { fixedText, unitName } from '../../words/numbers';
import { fullReadingText, meterOf } from '../../words/report';
import { numberOf } from '../../words/things';
import { meterNumber } from './metersTable';
import type { Table } from './table';

/** Readings with what is needed to use them again. A column stands only where its values differ; else a sentence says it. */
export function readingTable(home: Home, readings: readonly Reading[]): Table {
  const unit = home.settings.fieldUnit;
  const northUp = home.north === 0;
  const differ = (of: (reading: Reading) => unknown) => new Set(readings.map(of)).size > 1;
  const right = true as const;
  const time = timeColumn(readings);
  const columns: {
    text: string;
    right?: true;
    strong?: true;
    cell: (reading: Reading) => string;
    when?: boolean;
  }[] = [
    { text: basisWords.number, right, cell: (one) => numberOf(one.id) + (hasNote(one) ? '*' : '') },
    {
      text: basisWords.level,
      cell: (one) => home.levels[one.level]!.name,
      when: differ((one) => one.level),
    },
    { text: northUp ? 'east, m' : 'x, m', right, cell: ({ at }) => fixedText(at[0], 2) },
    { text: northUp ? 'north, m' : 'y, m', right, cell: ({ at }) => fixedText(at[1], 2) },
    {
      text: 'height, m',
      right,
      cell: ({ height }) => fixedText(height, 2),
      when: differ(({ height }) => height),
    },
    { text: 'time', right, cell: (one) => time?.(one) ?? '', when: time !== null },
    {
      text: 'meter',
      right,
      cell: (one) => meterNumber(home, meterOf(home, one)),
      when: differ((one) => meterOf(home, one)?.id),
    },
    { text: unitName(unit), right, strong: true, cell: (one) => fullReadingText(one, unit, home) },
  ];
  const shown = columns.filter(({ when }) => when !== false);
  return {
    heads: shown.map(({ text, right, strong }) => ({ text, right, strong })),
    rows: readings.map((reading) => shown.map(({ cell }) => cell(reading))),
  };
}

const hasNote = ({ excluded, taken, note, min, max, axes }: Reading): boolean =>
  excluded !== '' || taken === 'peak' || note !== '' || (min !== null && max !== null) || axes !== null;
