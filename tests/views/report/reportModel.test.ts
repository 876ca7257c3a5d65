import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { arrange } from '../../../src/engine/arranging/arrange';
import { assessHome } from '../../../src/engine/assessHome';
import { parseHome } from '../../../src/home/file/parse';
import type { Home, Meter } from '../../../src/home/home';
import { newHome } from '../../../src/home/newHome';
import { arrangeQuestion } from '../../../src/home/questions/arrangeQuestion';
import { assessQuestion } from '../../../src/home/questions/assessQuestion';
import { fieldText, intervalText } from '../../../src/words/numbers';
import { reportModel, type ReportModel } from '../../../src/views/report/reportModel';
import type { Drawing } from '../../../src/views/report/drawing';

function load(name: string): Home {
  const path = fileURLToPath(new URL(`../../../samples/${name}.home.json`, import.meta.url));
  const parsed = parseHome(readFileSync(path, 'utf8'));
  if (!parsed.ok) throw new Error(`sample ${name} does not parse`);
  return parsed.home;
}

function work(home: Home, arranged = true) {
  const request = assessQuestion(home);
  const reply = assessHome(request);
  const assessment = reply.ok ? reply.assessment : null;
  const problem = reply.ok ? null : reply.problem;
  const proposal =
    assessment && arranged
      ? arrange(arrangeQuestion(home, assessment.fitted, { cautious: false, aim: 'mean' }))
      : null;
  const model = reportModel({
    home,
    round: Object.keys(home.rounds)[0]!,
    assessment,
    request,
    proposal,
    wishes: { cautious: false, aim: 'mean' },
    problem,
  });
  return { home, request, assessment, proposal, model };
}

const anyMeter: Meter = {
  id: 'g9',
  name: 'House meter',
  axes: 3,
  unit: 'uT',
  percent: 5,
  absolute: 0,
  coverage: 'limits',
  resolution: 0.01,
  range: [0.01, 200],
  settleSeconds: 2,
  gain: 1,
  offset: 0,
  serial: '',
  calibrated: null,
  band: [40, 400],
};

const textsOf = (drawing: Drawing) =>
  drawing.marks.flatMap((mark) => (mark.is === 'text' ? [mark.text] : []));
const rowsOf = (model: ReportModel) => model.maps.flatMap(({ readings }) => readings.rows);

describe('a report with everything', () => {
  const { home, request, assessment, proposal, model } = work(load('terraced-house'));
  const unit = home.settings.fieldUnit;

  it('prints every room with the figures of the assessment', () => {
    const rows = model.front.rooms!.rows;
    expect(rows).toHaveLength(request.rooms.length);
    for (const room of assessment!.rooms) {
      const row = rows.find(([name]) => name === home.rooms[room.id]!.name)!;
      if (row[2] === '—') expect(room.supported).toBeLessThan(0.05);
      else
        expect(row.slice(2, 4)).toEqual([
          fieldText(room.median, unit),
          intervalText(room.low, room.high, unit),
        ]);
    }
  });

  it('puts sleeping rooms first and the grounds last', () => {
    const uses = model.front.rooms!.rows.map(([, use]) => use);
    expect(uses.lastIndexOf('sleeping')).toBe(uses.filter((use) => use === 'sleeping').length - 1);
    expect(uses.indexOf('grounds')).toBe(uses.length - uses.filter((use) => use === 'grounds').length);
  });

  it('prints a reading as it was typed, whatever the step of the meter', () => {
    const home = load('single-bedroom');
    const [typed, bare, milligauss] = Object.values(home.readings);
    home.meters = {};
    home.meters['g9'] = { ...anyMeter, resolution: 0.01 };
    home.readings[typed!.id] = { ...typed!, value: 0.037, text: '0,0370 µT', meter: 'g9' };
    home.readings[bare!.id] = { ...bare!, value: 0.3, text: '', meter: 'g9' };
    home.readings[milligauss!.id] = { ...milligauss!, value: 0.125, text: '1.25 mG', meter: 'g9' };
    const { model } = work(home, false);
    const shown = new Map(rowsOf(model).map((row) => [row[0]!.replace('*', ''), row.at(-1)]));
    expect([typed!, bare!, milligauss!].map(({ id }) => shown.get(id.slice(1)))).toEqual([
      '0.0370',
      '0.30',
      '0.125',
    ]);
  });

  it('does not state a frequency band that nobody entered', () => {
    const home = load('single-bedroom');
    home.meters = { g9: anyMeter, g10: { ...anyMeter, id: 'g10', band: [30, 2000] } };
    const rows = work(home, false).model.meters!.rows;
    expect(rows.map((row) => row[6])).toEqual(['not stated', '30–2000']);
  });

  it('lists every reading once, under the number it has on paper', () => {
    const readings = Object.values(home.readings).filter(
      ({ round }) => round === null || round === Object.keys(home.rounds)[0],
    );
    const numbers = rowsOf(model).map(([number]) => number!.replace('*', ''));
    expect(numbers.toSorted()).toEqual(readings.map(({ id }) => id.slice(1)).toSorted());
  });

  it('draws one true-scale map a level, with its scale said', () => {
    expect(model.maps).toHaveLength(Object.keys(home.levels).length);
    for (const map of model.maps) expect(map.caption).toMatch(/^1 : (50|75|100|125|150|200) on A4 · /);
  });

  it('says the change in dose, its interval and the odds', () => {
    const lead = model.front.lead.map(({ text }) => text).join('');
    const placed = proposal!.pieces.find(({ id }) => id === proposal!.about)!;
    expect(lead).toContain(fieldText(placed.after!.dose, unit));
    expect(lead).toContain(intervalText(placed.after!.low, placed.after!.high, unit));
    expect(model.arrangement!.pieces.rows).toHaveLength(proposal!.pieces.length);
  });

  it('gives the evidence place by place', () => {
    const { rows } = model.evidence!.rows;
    expect(rows).toHaveLength(assessment!.evidence.rows.length);
    expect(model.evidence!.compared.rows).toHaveLength(assessment!.evidence.compared.length);
    expect(rows.map((row) => row.at(-1))).not.toContain('—');
    const { plot, sentences } = model.evidence!;
    expect(plot.rows).toBe(assessment!.evidence.rows);
    expect(rows.filter((row) => row.at(-2) !== '').length).toBeGreaterThanOrEqual(plot.looks.length);
    expect(sentences.join(' ')).toMatch(/\d+ of \d+ lie inside .*expected.*[Tt]he map leans on/);
  });

  it('carries limits and cautions', () => {
    expect(model.cautions.map(({ text }) => text).join(' ')).toMatch(
      /no panel.*electrician.*3 m.*medical advice.*100 µT.*no radio/s,
    );
    expect(model.limits.length).toBeGreaterThan(3);
  });

  it('names every room on the map, and inks the bands below the walls', () => {
    const { plan } = model.maps[0]!;
    const words = textsOf(plan).map((text) => text.toLowerCase());
    for (const room of Object.values(home.rooms).filter(({ level }) => level === model.maps[0]!.level)) {
      expect(words).toContain(room.name.toLowerCase());
    }
    const inks = plan.marks.findIndex((mark) => mark.is === 'area' && mark.clip === 'floor');
    const walls = plan.marks.findIndex((mark) => mark.is === 'area' && mark.fill === '#382d3b');
    expect(inks).toBeGreaterThanOrEqual(0);
    expect(walls).toBeGreaterThan(inks);
  });

  it('is the same each time', () => {
    expect(JSON.stringify(work(load('terraced-house')).model)).toBe(JSON.stringify(model));
  });
});

describe('a report without a part of it', () => {
  it('says why there is no map, and prints what is known', () => {
    const home = load('single-bedroom');
    for (const id of Object.keys(home.readings).slice(2)) delete home.readings[id];
    const { model } = work(home);
    expect(model.front.lead.map(({ text }) => text).join('')).toMatch(/3 readings/);
    expect(model.front.rooms).toBeNull();
    expect(model.evidence).toBeNull();
    expect(rowsOf(model)).toHaveLength(2);
    expect(model.maps[0]!.signs.map(({ text }) => text)).not.toContain('unsupported');
  });

  it('an empty home makes a first page and the cautions', () => {
    const { model } = work(newHome('Empty'));
    expect(model.front.plan).toBeNull();
    expect(model.maps).toEqual([]);
    expect(model.meters).toBeNull();
    expect(model.cautions.length).toBeGreaterThan(5);
  });

  it('without a proposal the finding is about the rooms', () => {
    const { model } = work(load('single-bedroom'), false);
    expect(model.arrangement).toBeNull();
    expect(model.front.lead[0]!.text).toMatch(/target/);
  });

  it('a room without readings near enough is hatched and not judged', () => {
    const home = load('terraced-house');
    // The marked line would speak for the rooms behind.
    home.settings.method = 'kriging';
    for (const [id, reading] of Object.entries(home.readings))
      if (reading.at[1] > 3) delete home.readings[id];
    const { model, assessment } = work(home, false);
    const blank = assessment!.rooms.filter(({ supported }) => supported < 0.5);
    expect(blank.length).toBeGreaterThan(0);
    expect(blank.every((room) => room.class === null)).toBe(true);
    const rows = model.front.rooms!.rows.filter((row) => /not judged|too little to judge/.test(row.at(-1)!));
    expect(rows.map(([name]) => name).toSorted()).toEqual(
      blank.map(({ id }) => home.rooms[id]!.name).toSorted(),
    );
    expect(model.maps[0]!.plan.clips.hatched).not.toBe('');
    expect(model.maps[0]!.signs.map(({ text }) => text)).toContain('unsupported');
    expect(model.front.found.join(' ')).toContain('Too little drawn to judge');
  });

  it('what is left out or a peak is marked and explained', () => {
    const home = load('single-bedroom');
    const [first, second] = Object.values(home.readings);
    home.readings[first!.id] = { ...first!, excluded: 'kettle on' };
    home.readings[second!.id] = { ...second!, taken: 'peak' };
    const { model } = work(home, false);
    expect(rowsOf(model).filter(([number]) => number!.endsWith('*'))).toHaveLength(2);
    expect(model.maps[0]!.notes.join(' ')).toMatch(/left out \(kettle on\).*peak/);
  });
});

it('a home in milligauss and feet is printed in them', () => {
  const home = load('one-bedroom-flat');
  home.settings.fieldUnit = 'mG';
  home.settings.lengthUnit = 'ft';
  const { model } = work(home, false);
  expect(model.maps[0]!.caption).toMatch(/ft.*mG$/);
  expect(model.front.rooms!.heads[2]!.text).toBe('middle, mG');
  expect(textsOf(model.maps[0]!.ruler)).toContain('mG');
});
