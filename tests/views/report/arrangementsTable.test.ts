import { describe, expect, it } from 'vitest';
import { addReading, addSource } from '../../../src/home/edits/add';
import { arrangementsTable } from '../../../src/views/report/arrangementsTable';
import { compareArrangements } from '../../../src/engine/whatIf/compareArrangements';
import { compareQuestion } from '../../../src/home/questions/compareQuestion';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { keepArrangement } from '../../../src/home/edits/arrangements';
import { surveyOf } from '../../../src/home/questions/surveyOf';
import { takePlaces } from '../../../src/home/edits/takePlaces';
import { tryEdit } from '../../../src/editor/store';
import { bedroom } from '../../support/homes';
import type { Edit } from '../../../src/home/edits/edit';
import type { Home } from '../../../src/home/home';

const after = (home: Home, ...edits: Edit[]): Home =>
  edits.reduce((before, edit) => {
    const tried = tryEdit(before, edit);
    if ('problem' in tried) throw new Error(JSON.stringify(tried.problem));
    return tried.change.home;
  }, home);

function tableOf(home: Home, method: Home['settings']['method'] = 'source-kriging') {
  const fit = fitSurvey(surveyOf(home, 'a', method));
  if (!fit.ok) throw new Error(fit.problem.kind);
  return arrangementsTable(home, compareArrangements(compareQuestion(home, fit.fitted)));
}

const home = after(
  bedroom(),
  addSource({ kind: 'point', name: 'Heat pump', level: 'l1', path: [[-0.4, 2]], height: 1 }),
  addReading({ level: 'l1', at: [0.2, 2], value: 0.6 }),
);
const moved = takePlaces([{ id: 'p1', level: 'l1', at: [4, 3], angle: 0 }]);

describe('kept arrangements in the report', () => {
  it('are no part of it where only how things were found is kept', () => {
    expect(tableOf(home)).toBeNull();
    expect(tableOf(after(home, moved))).toBeNull();
  });

  it('come as found first, with what differs and how likely it is lower', () => {
    const { table, note } = tableOf(after(home, moved, keepArrangement('By the window')))!;
    expect(table.rows.map(([name]) => name)).toEqual(['As found', 'Now', 'By the window']);
    expect(table.heads[3]!.text).toBe('lower than as found');
    expect(table.rows[0]!.slice(3)).toEqual(['', '']);
    expect(table.rows[1]![3]).toMatch(/^lower: (>.)?\d\d/);
    expect(table.rows[1]![4]).toBe('Bed moved');
    expect(note).toBe('');
  });

  it('say that what would be without a source is not measured', () => {
    const kept = keepArrangement('Without it', { sources: [{ id: 's1', scale: 0, path: null }] });
    const { table, note } = tableOf(after(home, kept))!;
    expect(table.rows.map(([name]) => name)).toEqual(['As found, and now', 'Without it']);
    expect(table.rows[1]![4]).toBe('Heat pump off · not measured');
    expect(table.rows[0]!.join()).not.toContain('not measured');
    expect(note).toContain('not measured');
    expect(tableOf(after(home, kept), 'kriging')!.table.rows[1]).toEqual([
      'Without it',
      '—',
      '—',
      '',
      'This map was drawn by kriging, which knows no sources. Choose source kriging or source sampling to try it.',
    ]);
  });
});
