const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}:\d{2}))?/;

/** '14 March 2026' from an ISO date or time, by the clock it was written with. */
export function dateText(iso: string): string {
  const match = ISO.exec(iso);
  if (!match) return iso;
  return `${Number(match[3])} ${MONTHS[Number(match[2]) - 1]} ${match[1]}`;
}

/** When a survey was made: '14 March 2026, 19:10 to 20:05', or from one day to another; null where no time is known. */
export function spanText(times: readonly string[]): string | null {
  const known = times.filter((time) => ISO.test(time)).sort();
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return null;
  if (first.slice(0, 10) !== last.slice(0, 10)) return `${dateText(first)} to ${dateText(last)}`;
  const [from, to] = [ISO.exec(first)?.[4], ISO.exec(last)?.[4]];
  if (!from || !to) return dateText(first);
  return from === to ? `${dateText(first)}, ${from}` : `${dateText(first)}, ${from} to ${to}`;
}
