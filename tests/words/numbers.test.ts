import { describe, expect, it } from 'vitest';
import {
  countText,
  doseText,
  doseUnitName,
  doseWithUnit,
  estimateText,
  fieldText,
  fixedText,
  fromUnit,
  intervalText,
  inUnit,
  lengthText,
  oddsText,
  percentText,
  readingText,
  unitName,
  withUnit,
} from '../../src/words/numbers';

describe('fieldText', () => {
  it.each([
    [0.14, '0.14'],
    [0.06, '0.060'],
    [0.0999, '0.10'],
    [0.999, '1.0'],
    [1.94, '1.9'],
    [9.96, '10'],
    [15.4, '15'],
    [153, '150'],
    [0.0123, '0.012'],
    [0, '0'],
  ])('writes %f µT with two significant figures', (value, text) => {
    expect(fieldText(value, 'uT')).toBe(text);
  });

  it('follows the unit shown', () => {
    expect(fieldText(0.14, 'mG')).toBe('1.4');
    expect(fieldText(0.06, 'mG')).toBe('0.60');
    expect(fieldText(0.14, 'nT')).toBe('140');
    expect(fieldText(0.0064, 'nT')).toBe('6.4');
  });

  it('is never finer than the meter', () => {
    expect(fieldText(0.064, 'uT', 0.01)).toBe('0.06');
    expect(fieldText(0.064, 'mG', 0.01)).toBe('0.6');
    expect(fieldText(0.064, 'nT', 0.01)).toBe('64');
    expect(fieldText(0.064, 'uT', 0.001)).toBe('0.064');
    expect(fieldText(0.14, 'uT', 0.1)).toBe('0.1');
  });

  it('says below the last digit where the meter could not have shown it', () => {
    expect(fieldText(0.003, 'uT', 0.01)).toBe('<\u20090.01');
  });

  it('takes a true minus and never a minus before zero', () => {
    expect(fieldText(-0.14, 'uT')).toBe('−0.14');
    expect(fixedText(-0.004, 2)).toBe('0.00');
    expect(fixedText(-1.25, 1)).toMatch(/^−1\.[23]$/);
  });
});

describe('units', () => {
  it('names them', () => {
    expect(unitName('uT')).toBe('µT');
    expect(doseUnitName('mG')).toBe('mG·h');
    expect(withUnit(0.14, 'uT')).toBe('0.14 µT');
    expect(doseWithUnit(1.94, 'uT')).toBe('1.9 µT·h');
    expect(doseText(0.64, 'mG')).toBe('6.4');
  });

  it('converts there and back', () => {
    for (const unit of ['uT', 'mG', 'nT'] as const)
      expect(fromUnit(inUnit(0.37, unit), unit)).toBeCloseTo(0.37, 12);
    expect(inUnit(1, 'mG')).toBe(10);
    expect(inUnit(1, 'nT')).toBe(1000);
  });
});

describe('intervals and estimates', () => {
  it('joins the ends with an en dash', () => {
    expect(intervalText(0.0921, 0.2149, 'uT')).toBe('0.092–0.21');
    expect(intervalText(0.0921, 0.2149, 'uT', 0.01)).toBe('0.09–0.21');
    expect(intervalText(1.18, 1.22, 'uT')).toBe('1.18–1.22');
    expect(intervalText(1.2034, 1.2041, 'uT')).toBe('1.203–1.204');
    expect(intervalText(0.118, 0.122, 'mG')).toBe('1.18–1.22');
    expect(estimateText(0.14, 0.092, 0.214, 'uT')).toBe('0.14 µT (0.092–0.21)');
  });
});

it('an interval is never a number twice', () => {
  // Ends that agree to four figures, or as far as the meter tells, are one number.
  expect(intervalText(1.20301, 1.20302, 'uT')).toBe('1.20');
  expect(intervalText(0.061, 0.064, 'uT', 0.01)).toBe('0.06');
  expect(intervalText(0, 0, 'uT')).toBe('0');
});

describe('readingText', () => {
  it('writes what the display showed, digit for digit', () => {
    expect(readingText(0.14, 'uT', 0.001)).toBe('0.140');
    expect(readingText(0.1, 'mG', 0.01)).toBe('1.0');
    expect(readingText(0.1, 'nT', 0.001)).toBe('100');
    expect(readingText(0.14, 'uT')).toBe('0.14');
    expect(readingText(0.3 / 10, 'mG')).toBe('0.3');
  });
});

describe('lengthText', () => {
  it.each([
    [4.2, 'm', '4.20 m'],
    [-1, 'm', '−1.00 m'],
    [4.191, 'ft', '13 ft 9 in'],
    [3.6576, 'ft', '12 ft'],
    [0.1, 'ft', '4 in'],
    [3.6449, 'ft', '12 ft'],
    [-3.6576, 'ft', '−12 ft'],
  ] as const)('writes %f m in %s', (metres, unit, text) => {
    expect(lengthText(metres, unit)).toBe(text);
  });

  it('takes fewer decimals', () => {
    expect(lengthText(3.14, 'm', 1)).toBe('3.1 m');
  });
});

describe('percentText', () => {
  it('puts a thin space before the sign', () => {
    expect(percentText(0.52)).toBe('52\u2009%');
    expect(percentText(0)).toBe('0\u2009%');
    expect(percentText(1)).toBe('100\u2009%');
  });

  it('never calls something nothing, nor nearly all all', () => {
    expect(percentText(0.001)).toBe('<\u20091\u2009%');
    expect(percentText(0.9999)).toBe('>\u200999\u2009%');
  });
});

describe('countText', () => {
  it('agrees in number', () => {
    expect(countText(1, 'reading')).toBe('1 reading');
    expect(countText(0, 'reading')).toBe('0 readings');
    expect(countText(2, 'survey', 'surveys')).toBe('2 surveys');
  });
});

it('odds are never called certain', () => {
  expect(oddsText(1)).toBe('>\u200999\u2009%');
  expect(oddsText(0)).toBe('<\u20091\u2009%');
  expect(oddsText(0.96)).toBe('96\u2009%');
});
