import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { arrange, type Proposal } from '../../../src/engine/arranging/arrange';
import { assessHome } from '../../../src/engine/assessHome';
import { tryEdit } from '../../../src/editor/store';
import { takePlaces } from '../../../src/home/edits/takePlaces';
import { parseHome } from '../../../src/home/file/parse';
import type { Home } from '../../../src/home/home';
import { arrangeQuestion } from '../../../src/home/questions/arrangeQuestion';
import { assessQuestion } from '../../../src/home/questions/assessQuestion';
import { changeText } from '../../../src/words/arranging';
import { movedText } from '../../../src/words/furniture';
import { reportModel } from '../../../src/views/report/reportModel';

function load(name: string): Home {
  const path = fileURLToPath(new URL(`../../../samples/${name}.home.json`, import.meta.url));
  const parsed = parseHome(readFileSync(path, 'utf8'));
  if (!parsed.ok) throw new Error(`sample ${name} does not parse`);
  return parsed.home;
}

function assessed(home: Home) {
  const request = assessQuestion(home);
  const reply = assessHome(request);
  if (!reply.ok) throw new Error(reply.problem.kind);
  return { request, assessment: reply.assessment };
}

function reported(home: Home, proposal: Proposal | null) {
  const { request, assessment } = assessed(home);
  const round = Object.keys(home.rounds)[0]!;
  return reportModel({
    home,
    round,
    assessment,
    request,
    proposal,
    wishes: { cautious: false, aim: 'mean' },
    problem: null,
  });
}

function taken(home: Home, { pieces }: Proposal): Home {
  const tried = tryEdit(home, takePlaces(pieces.filter(({ moves }) => moves)));
  if ('problem' in tried) throw new Error(tried.problem.kind);
  return tried.change.home;
}

describe('an arrangement that was taken does not vanish from the report', () => {
  const home = load('terraced-house');
  const { assessment } = assessed(home);
  const proposal = arrange(arrangeQuestion(home, assessment.fitted, { cautious: false, aim: 'mean' }));
  const proposed = reported(home, proposal);
  const since = reported(taken(home, proposal), null);
  const lead = (model: typeof since) => model.front.lead.map(({ text }) => text).join('');

  it('keeps doses, interval, odds and both plans', () => {
    expect(since.arrangement!.change).toEqual(proposed.arrangement!.change);
    expect(since.arrangement!.plans).toHaveLength(proposed.arrangement!.plans.length);
    const figures = (model: typeof since) =>
      model.arrangement!.pieces.rows.map((row) => [row[0], ...row.slice(2)]);
    expect(figures(since)).toEqual(expect.arrayContaining(figures(proposed)));
    expect(since.arrangement!.plans[0]!.before.marks).toEqual(proposed.arrangement!.plans[0]!.before.marks);
  });

  it('says so in the first sentence, in the past', () => {
    expect(lead(proposed)).toContain(' falls from ');
    expect(lead(since)).toBe(lead(proposed).replace(' falls from ', ' fell from '));
    expect([since.arrangement!.before, since.arrangement!.after]).toEqual(['As found', 'As it stands']);
    expect(since.arrangement!.pieces.heads.map(({ text }) => text)).toContain('as found, µT·h');
  });

  it('a proposal that would move something more is told instead; one that moves nothing is not', () => {
    const there = taken(home, proposal);
    const again = arrange(arrangeQuestion(there, assessment.fitted, { cautious: false, aim: 'mean' }));
    expect(again.pieces.some(({ moves }) => moves)).toBe(false);
    expect(reported(there, again).arrangement!.before).toBe('As found');
    expect(reported(there, { ...proposal }).arrangement!.after).toBe('As proposed');
  });

  it('tells the dose of the bed and the mean over the people by different names', () => {
    const placed = proposal.pieces.find(({ id }) => id === proposal.about)!;
    const own = changeText(
      {
        before: placed.before!.dose,
        after: placed.after!.dose,
        low: placed.after!.low,
        high: placed.after!.high,
      },
      'uT',
    );
    expect(lead(proposed)).toMatch(/^A night in bed [A-Z] /);
    expect(lead(proposed)).toContain(own.after);
    expect(proposed.arrangement!.whole).toMatch(/home as a whole/);
    expect(proposed.arrangement!.change).toEqual(changeText(proposal, 'uT'));
    expect(proposed.arrangement!.notes[0]).toContain('for the home as a whole');
    const others = proposed.arrangement!.tables.find(({ title }) => title === 'Other answers')!.table;
    expect(others.rows.length).toBeGreaterThan(1);
    expect(new Set(others.rows.map(([title]) => title)).size).toBe(others.rows.length);
    for (const [, piece, dose, , whole] of others.rows) {
      expect(piece).toMatch(/^(bed|cot) [A-Z]$/);
      expect([Number(dose), Number(whole)].every((value) => value > 0)).toBe(true);
    }
    // Whoever is asked after has a row before the change and after it, taken or not.
    const people = (model: typeof since) =>
      model.arrangement!.tables.find(({ title }) => title === 'What each person has, a day')!.table;
    expect(people(proposed).rows).toHaveLength(proposal.people.length);
    expect(people(since).rows).toEqual(people(proposed).rows);
    expect(people(since).heads[1]!.text).toBe('as found, µT·h');
  });
});

it('a piece that makes way is not said to be better there', () => {
  const home = load('terraced-house');
  const [bed, desk] = Object.values(home.pieces);
  const dose = (value: number) => ({ mean: value / 8, dose: value, low: value * 0.8, high: value * 1.2 });
  const moved = {
    id: desk!.id,
    room: 'r1',
    level: 'l1',
    at: [1, 1] as const,
    angle: 0,
    moves: true,
    before: dose(0.2),
    after: dose(0.3),
    odds: 0.1,
    decision: 'stay' as const,
    makesWayFor: bed!.id,
    breaks: [],
  };
  expect(movedText(home, moved)).toMatch(/^makes way for bed [A-Z]$/);
  // Whoever put it there by hand may have broken a rule for it.
  const byItself = { ...moved, makesWayFor: null };
  expect([movedText(home, byItself), movedText(home, byItself, true)]).toEqual([
    'keeps the rules there',
    'no gain of its own',
  ]);
  expect(movedText(home, { ...moved, after: dose(0.1), odds: 0.95, decision: 'move' })).toBe(
    'better there: 95\u2009%',
  );
});
