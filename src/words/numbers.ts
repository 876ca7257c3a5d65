import type { FieldUnit, LengthUnit } from '../home/home';

/** U+2009: between a number and %, so that the sign is neither glued to it nor lost to the next line. */
const THIN = '\u2009';
const MINUS = '−';
const FIELD_UNITS: Record<FieldUnit, { name: string; perMicrotesla: number }> = {
  uT: { name: 'µT', perMicrotesla: 1 },
  mG: { name: 'mG', perMicrotesla: 10 },
  nT: { name: 'nT', perMicrotesla: 1000 },
};
const METRES_PER_INCH = 0.0254;

export function unitName(unit: FieldUnit): string {
  return FIELD_UNITS[unit].name;
}

export function doseUnitName(unit: FieldUnit): string {
  return `${unitName(unit)}·h`;
}

/** µT → the number in the unit shown. */
export function inUnit(microtesla: number, unit: FieldUnit): number {
  return microtesla * FIELD_UNITS[unit].perMicrotesla;
}

/** The number in the unit shown → µT. */
export function fromUnit(value: number, unit: FieldUnit): number {
  return value / FIELD_UNITS[unit].perMicrotesla;
}

/** A number with so many decimals, a true minus, and no "−0". */
export function fixedText(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

/**
 * Two significant figures, or so many, with the trailing zero kept (0.060), never finer than `resolution` (same unit as the
 * value; 0 for none). What is above zero but rounds to nothing is said to be below the last digit.
 */
function deservedText(value: number, resolution = 0, figures = 2): string {
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(figures));
  const needed = Math.max(0, figures - 1 - Math.floor(Math.log10(Math.abs(rounded))));
  const allowed = resolution > 0 ? Math.max(0, Math.ceil(-Math.log10(resolution) - 1e-9)) : needed;
  if (allowed >= needed) return fixedText(rounded, needed);
  const text = fixedText(value, allowed);
  return Number(text.replace(MINUS, '-')) === 0 ? `<${THIN}${fixedText(resolution, allowed)}` : text;
}

/** '0.14': the field in the unit shown, two significant figures, never finer than the meter (µT, 0 for no meter). */
export function fieldText(microtesla: number, unit: FieldUnit, resolution = 0): string {
  return deservedText(inUnit(microtesla, unit), inUnit(resolution, unit));
}

/** '0.14 µT' */
export function withUnit(microtesla: number, unit: FieldUnit, resolution = 0): string {
  return `${fieldText(microtesla, unit, resolution)} ${unitName(unit)}`;
}

/**
 * '0.090–0.21': both ends as a field would be written; '1.18–1.22' where two figures would make them one number. Ends that are one
 * to four figures are written once.
 */
export function intervalText(low: number, high: number, unit: FieldUnit, resolution = 0): string {
  const ends = (figures: number) =>
    [low, high].map((end) => deservedText(inUnit(end, unit), inUnit(resolution, unit), figures));
  const [from, to] = [2, 3, 4].map(ends).find(([from, to]) => from !== to) ?? ends(3);
  return from === to ? from! : `${from}–${to}`;
}

/** '0.14 µT (0.090–0.21)' */
export function estimateText(value: number, low: number, high: number, unit: FieldUnit): string {
  return `${withUnit(value, unit)} (${intervalText(low, high, unit)})`;
}

/** '1.9': µT·h in the unit shown. */
export function doseText(microteslaHours: number, unit: FieldUnit): string {
  return fieldText(microteslaHours, unit);
}

/** '1.9 µT·h' */
export function doseWithUnit(microteslaHours: number, unit: FieldUnit): string {
  return `${doseText(microteslaHours, unit)} ${doseUnitName(unit)}`;
}

/**
 * The value exactly as the meter shows it: its own digits and no more. `resolution` in µT; without one the number is
 * written in full.
 */
export function readingText(microtesla: number, unit: FieldUnit, resolution = 0): string {
  const value = inUnit(microtesla, unit);
  const step = inUnit(resolution, unit);
  if (step <= 0) return String(Number(value.toPrecision(6))).replace('-', MINUS);
  return fixedText(value, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
}

/** '4.20 m', or '13 ft 9 in' to the nearest inch. */
export function lengthText(metres: number, unit: LengthUnit, decimals = 2): string {
  if (unit === 'm') return `${fixedText(metres, decimals)} m`;
  const inches = Math.round(Math.abs(metres) / METRES_PER_INCH);
  const sign = metres < 0 && inches > 0 ? MINUS : '';
  const feet = Math.floor(inches / 12);
  if (feet === 0) return `${sign}${inches} in`;
  return inches % 12 === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${inches % 12} in`;
}

/** '52 %' from 0.52. Something is never called nothing, and not quite all is never called all. */
export function percentText(fraction: number): string {
  const percent = Math.round(fraction * 100);
  if (percent === 0 && fraction > 0) return `<${THIN}1${THIN}%`;
  if (percent === 100 && fraction < 1) return `>${THIN}99${THIN}%`;
  return `${fixedText(percent, 0)}${THIN}%`;
}

/** '96 %': odds are never certain, however far apart two figures lie. */
export const oddsText = (odds: number): string => percentText(Math.min(0.999, Math.max(0.001, odds)));

/** '74 % (46–94)' from 0.74, 0.46 and 0.94; without its interval where that rounds to nothing. */
export function shareText(share: number, low: number, high: number): string {
  const [value, from, to] = [share, low, high].map(percentText) as [string, string, string];
  const bare = (text: string) => text.replace(`${THIN}%`, '');
  return from === value && to === value ? value : `${value} (${bare(from)}–${bare(to)})`;
}

/** '1.2': a root mean square of ln as the factor it stands for. */
export function factorText(rmsLn: number): string {
  const factor = Math.exp(rmsLn);
  return fixedText(factor, factor < 10 ? (factor < 1.995 ? 2 : 1) : 0);
}

/** '3 readings', '1 reading' */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
