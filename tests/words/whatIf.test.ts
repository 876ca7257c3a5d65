import { describe, expect, it } from 'vitest';
import { addSource } from '../../src/home/edits/add';
import { supposedAnswerSentence } from '../../src/words/whatIf';
import { tryEdit } from '../../src/editor/store';
import { bedroom } from '../support/homes';
import type { Home } from '../../src/home/home';

const add = (home: Home, ...[source]: Parameters<typeof addSource>): Home => {
  const tried = tryEdit(home, addSource(source));
  if ('problem' in tried) throw new Error(JSON.stringify(tried.problem));
  return tried.change.home;
};
const line = { level: 'l1', path: [[-4, 0] as [number, number], [-4, 9] as [number, number]], height: 6 };
const home = add(add(bedroom(), { kind: 'line', name: 'Street line', ...line }), {
  kind: 'point',
  name: 'Heat pump',
  level: 'l1',
  path: [[0.2, 2]],
  height: 1,
});
const off = (id: string) => ({ id, scale: 0, path: null });

describe('an answer made on a map as it would be', () => {
  it('holds only for the source as tried, and advises no move', () => {
    const sentence = supposedAnswerSentence(home, [off('s1')], 'move');
    expect(sentence).toBe('This holds only with the street line off, as tried. The source itself stays on.');
    expect(supposedAnswerSentence(home, [off('s1'), off('s2')], 'measure-both')).toBe(
      'This holds only with the street line off and the heat pump off, as tried. The sources themselves stay on.',
    );
    expect(supposedAnswerSentence(home, [{ ...off('s2'), scale: 0.5 }], 'move')).toBe(
      'This holds only with the heat pump half, as tried. The source itself stays as it is.',
    );
  });

  it('says where there is no clear gain', () => {
    expect(supposedAnswerSentence(home, [off('s1')], 'stay')).toBe(
      'There is no clear gain with the street line off, as tried. The source itself stays on.',
    );
  });
});
