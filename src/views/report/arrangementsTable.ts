import type { ComparedArrangement } from '../../engine/whatIf/compareArrangements';
import type { Home } from '../../home/home';
import { arrangementRows, type ArrangementRow } from '../../home/questions/arrangementRows';
import { arrangementTitle, chanceText, differsText, keptWords, worthOf } from '../../words/whatIf';
import { doseText, doseUnitName, intervalText } from '../../words/numbers';
import { problemText } from '../../words/problems';
import type { Titled } from './basisPart';

const unmeasuredMark = ({ differs }: ArrangementRow): string =>
  differs.sources.length > 0 ? ` · ${keptWords.notMeasured}` : '';

/** The arrangements that are kept, as found first; null where none is but how things were found, or none is compared yet. */
export function arrangementsTable(
  home: Home,
  compared: readonly ComparedArrangement[] | null,
): Titled | null {
  const rows = arrangementRows(home);
  if (!compared || !rows.some(({ name, isFirst }) => name !== null && !isFirst)) return null;
  const unit = home.settings.fieldUnit;
  const of = (id: string) => compared.find((one) => one.id === id) ?? null;
  const first = worthOf(of(rows[0]!.id));
  const worths = rows.map(({ id }) => worthOf(of(id)));
  const unmeasured = rows.some(({ differs }) => differs.sources.length > 0);
  return {
    title: keptWords.title,
    table: {
      heads: [
        { text: keptWords.word.toLowerCase() },
        { text: `whole home, ${doseUnitName(unit)}`, right: true, strong: true },
        { text: '90\u2009% interval', right: true },
        { text: keptWords.chance(arrangementTitle(rows[0]!)).toLowerCase() },
        { text: keptWords.differs.toLowerCase() },
      ],
      rows: rows.map((row, i) => {
        const worth = worths[i]!;
        const one = of(row.id);
        const dose = worth?.whole;
        return [
          arrangementTitle(row),
          dose ? doseText(dose.dose, unit) : '—',
          dose ? intervalText(dose.low, dose.high, unit) : '—',
          worth ? chanceText({ dose: worth.whole, odds: worth.odds }, first?.whole ?? null) : '',
          row.isFirst
            ? ''
            : one && 'without' in one
              ? problemText(one.without)
              : differsText(home, row.differs) + unmeasuredMark(row),
        ];
      }),
    },
    note: [
      ...(unmeasured ? [keptWords.unmeasured] : []),
      ...(worths.some((worth) => worth?.apart) ? [keptWords.apart] : []),
    ].join(' '),
  };
}
