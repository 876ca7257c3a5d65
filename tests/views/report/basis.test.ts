import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assessHome } from '../../../src/engine/assessHome';
import { parseHome } from '../../../src/home/file/parse';
import type { Home } from '../../../src/home/home';
import { assessQuestion } from '../../../src/home/questions/assessQuestion';
import { reportModel } from '../../../src/views/report/reportModel';
import type { Drawing } from '../../../src/views/report/drawing';
import { doseText, fixedText } from '../../../src/words/numbers';

function load(name: string): Home {
  const parsed = parseHome(readFileSync(`samples/${name}.home.json`, 'utf8'));
  if (!parsed.ok) throw new Error(`sample ${name} does not parse`);
  return parsed.home;
}

function work(home: Home) {
  const request = assessQuestion(home);
  const reply = assessHome(request);
  if (!reply.ok) throw new Error('no assessment');
  const { assessment } = reply;
  const model = reportModel({
    home,
    round: Object.keys(home.rounds)[0]!,
    assessment,
    request,
    proposal: null,
    wishes: { cautious: false, aim: 'mean' },
    problem: null,
  });
  return { model, assessment };
}

const written = (drawing: Drawing) =>
  drawing.marks.flatMap((mark) => (mark.is === 'text' ? [mark.text] : []));

describe('a colleague could not work the report out again', () => {
  const home = load('terraced-house');
  const { model, assessment } = work(home);
  const table = (title: RegExp) => model.basis.tables.find((one) => title.test(one.title))!.table;

  it('doses stand in it though nothing was arranged', () => {
    const doses = model.doses!.rows.map((row) => row[6]);
    for (const { uses } of assessment.pieces)
      for (const { dose } of uses) expect(doses).toContain(doseText(dose.dose, home.settings.fieldUnit));
  });

  it('places, sizes and heights of furniture, sources, levels and corners stand in it', () => {
    for (const { at, height } of Object.values(home.pieces))
      expect(
        table(/Furniture/).rows.some(
          (row) =>
            row[2] === fixedText(at[0], 2) &&
            row[3] === fixedText(at[1], 2) &&
            row[6] === fixedText(height, 2),
        ),
      ).toBe(true);
    expect(table(/sources/).rows).toHaveLength(Object.keys(home.sources).length);
    expect(table(/Levels/).rows).toHaveLength(Object.keys(home.levels).length);
    for (const { outline } of Object.values(home.rooms))
      expect(table(/Corners/).rows.map((row) => row.at(-1))).toContain(
        outline.map(([x, y]) => `${fixedText(x, 2)}, ${fixedText(y, 2)}`).join('; '),
      );
  });

  it('the variogram stands with its formula and enough digits', () => {
    const { nugget, sill, range } = assessment.fitted.variogram;
    const steps = model.basis.steps.join(' ');
    expect(steps).toContain(
      `${fixedText(nugget, 4)} + ${fixedText(sill, 4)} × (1 − exp(−h/${fixedText(range, 2)} m))`,
    );
    expect(steps).toMatch(/÷ √3.*k = 2.*0\.6 Δh.*0\.6 × 0\.6 m/s);
  });

  it('the interval of inverse distance is explained where that method was used', () => {
    const asked = load('single-bedroom');
    asked.settings.method = 'inverse-distance';
    expect(work(asked).model.basis.steps.join(' ')).toMatch(/weights 1\/d to the power \d.*w·K·w/s);
  });

  it('source kriging is explained by its terms and the remainder’s variogram where that method was used', () => {
    const asked = load('terraced-house');
    asked.settings.method = 'source-kriging';
    const { model: explained, assessment: own } = work(asked);
    const { model: sum, variogram } = own.fitted.sources!;
    const steps = explained.basis.steps.join(' ');
    expect(sum.terms).toHaveLength(Object.keys(asked.sources).length);
    for (const { id, exponent, strength } of sum.terms) {
      const size = strength === 0 ? '0' : `(${fixedText(Math.sqrt(strength), 4)} µT)²`;
      expect(steps).toMatch(
        new RegExp(
          `${asked.sources[id]!.name}[^;]*: n = ${exponent} (by the readings|as given), s = ${size.replaceAll(/[()]/g, '\\$&')}`,
        ),
      );
    }
    expect(steps).toContain(`b is (${fixedText(Math.sqrt(sum.background), 4)} µT)²`);
    expect(steps).toMatch(/Variogram of the remainder.*½ ln B̂² at the place plus ordinary kriging/s);
    expect(steps).toContain(`${fixedText(variogram.nugget, 4)} + ${fixedText(variogram.sill, 4)} ×`);
    const plain = load('terraced-house');
    plain.settings.method = 'kriging';
    expect(work(plain).model.basis.steps.join(' ')).not.toMatch(/B̂|remainder/);
  });

  it('readings of the rounds that are not mapped are listed under their round', () => {
    const [first] = Object.keys(home.rounds);
    const others = Object.values(home.readings).filter(({ round }) => round !== null && round !== first);
    const listed = model.basis.rounds.flatMap(({ table: own }) =>
      own.rows.map((row) => row[0]!.replace('*', '')),
    );
    expect(listed.toSorted()).toEqual(others.map(({ id }) => id.slice(1)).toSorted());
    expect(model.basis.rounds.every(({ title }) => title !== '')).toBe(true);
  });

  it('a meter says whether its accuracy is meant as limits or with k = 2', () => {
    const [id, meter] = Object.entries(home.meters)[0]!;
    const both: Home = {
      ...home,
      meters: { [id]: { ...meter, coverage: 'limits' }, g9: { ...meter, id: 'g9', coverage: 'k2' } },
    };
    const accuracies = work(both).model.meters!.rows.map((row) => row[3]);
    expect(accuracies[0]).toMatch(/, limits$/);
    expect(accuracies[1]).toMatch(/, k = 2$/);
  });

  it('it names the file that holds the home, and the set of values with its edges', () => {
    expect(model.basis.file).toContain('.home.json');
    expect(model.edges.table.rows.length).toBeGreaterThan(1);
  });
});

it('a dot without a value once said nothing in print: a reading in a crowd has its number on a leader', () => {
  const home = load('single-bedroom');
  const [model0] = Object.values(home.readings);
  for (let i = 0; i < 30; i++)
    home.readings[`m${100 + i}`] = {
      ...model0!,
      id: `m${100 + i}`,
      at: [1.5 + 0.06 * (i % 6), 2 + 0.06 * Math.floor(i / 6)],
    };
  const [map] = work(home).model.maps;
  const texts = written(map!.plan);
  const numbered = texts.filter((text) => home.readings[`m${text}`]);
  const values = texts.filter((text) => /^\d*\.\d+$/.test(text));
  expect(numbered.length).toBeGreaterThan(0);
  expect(numbered.length + values.length).toBeGreaterThanOrEqual(Object.keys(home.readings).length);
  expect(map!.signs.map(({ text }) => text)).toContain('reading by its number in the table');
});
