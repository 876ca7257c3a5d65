/** A moment as the clock on the wall shows it, with its distance from UTC: '2026-03-02T19:40:00+01:00'. */
export function localTime(at: Date): string {
  const minutes = -at.getTimezoneOffset();
  const two = (n: number) => String(Math.floor(Math.abs(n))).padStart(2, '0');
  const wall = new Date(at.getTime() + minutes * 60_000).toISOString().slice(0, 19);
  return `${wall}${minutes < 0 ? '-' : '+'}${two(minutes / 60)}:${two(minutes % 60)}`;
}
