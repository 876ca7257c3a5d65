import { describe, expect, it } from 'vitest';
import { RULE_DEFAULTS, type RuleSettings } from '../../src/engine/arranging/ruleSettings';
import {
  changedRules,
  changedText,
  defaultText,
  fixedRules,
  listText,
  priceName,
  priceText,
  ruleName,
  ruleNote,
  ruleWords,
  stripsText,
} from '../../src/words/rules';
import { setSettings } from '../../src/home/edits/setSettings';
import { tryEdit } from '../../src/editor/store';
import { bedroom } from '../support/homes';

const keys = Object.keys(RULE_DEFAULTS) as (keyof RuleSettings)[];

describe('the rules of a livable room', () => {
  it('have a name each of its own, and a note that is a sentence', () => {
    expect(new Set(keys.map(ruleName)).size).toBe(keys.length);
    for (const key of keys) expect(ruleNote(key)).toMatch(/^[A-Z0-9].*\.$/);
  });

  it('are counted where they are not as by default, whoever set them', () => {
    expect(changedRules(RULE_DEFAULTS)).toEqual([]);
    const rules = { ...RULE_DEFAULTS, landing: 0.4, deskSideways: true };
    expect(changedRules(rules)).toEqual(['landing', 'deskSideways']);
    expect(ruleWords.title(0)).toBe('Rules of a livable room');
    expect(ruleWords.title(2)).toBe('Rules of a livable room, 2 changed');
    expect(changedText('landing', rules, 'm')).toBe(
      'before a door or gap, both sides: 0.40 m instead of 0.60 m',
    );
    expect(changedText('deskSideways', rules, 'm')).toMatch(/: on instead of off$/);
  });

  it('tell their default in the unit of lengths', () => {
    expect(defaultText('landing', 'm')).toBe('Otherwise 0.60 m.');
    expect(defaultText('landing', 'ft')).toBe('Otherwise 2 ft.');
    expect(defaultText('oneDouble', 'm')).toBe('Otherwise on.');
    expect(defaultText('deskSideways', 'm')).toBe('Otherwise off.');
  });

  it('that always hold say so, and name their source', () => {
    const fixed = fixedRules('m');
    const never = fixed.filter(({ source }) => source.endsWith('Never given up.'));
    expect(never.map(({ rule }) => /cot|escape|door/.exec(rule)![0])).toEqual(['cot', 'escape', 'door']);
    expect(fixed[0]!.rule).toContain('0.60 m from radiators and windows and 0.30 m from other pieces');
    expect(fixed[0]!.source).toContain('AAP News (2006)');
    expect(fixedRules('ft')[0]!.rule).toContain('2 ft from radiators');
  });

  it('name the strips of a piece by their sides', () => {
    const access = { left: 0.75, right: 0.75, foot: 0.75 };
    expect(stripsText({ kind: 'bed', access }, 'm')).toBe('0.75 m at the left, at the right and at the foot');
    expect(stripsText({ kind: 'desk', access: { left: 0, right: 0, foot: 0.9 } }, 'm')).toBe(
      '0.90 m where one sits',
    );
    expect(stripsText({ kind: 'bed', access: { ...access, right: 0.45, foot: 0 } }, 'm')).toBe(
      '0.75 m at the left, 0.45 m at the right',
    );
    expect(stripsText({ kind: 'other', access: { left: 0, right: 0, foot: 0 } }, 'm')).toBe('none asked for');
  });
});

describe('the price of a rule', () => {
  const home = bedroom();

  it('names the rule with its length as it is set, or whose strips they are', () => {
    const tried = tryEdit(home, setSettings({ rules: { ...RULE_DEFAULTS, landing: 0.4 } }));
    const set = 'change' in tried ? tried.change.home : home;
    const of = (rule: keyof RuleSettings) => priceName(set, { rule, piece: null, saves: 0 });
    expect(of('landing')).toBe('Before a door or gap, both sides, 0.40 m');
    expect(of('oneDouble')).toBe('One bed for two in a room');
    expect(priceName(home, { rule: 'strips', piece: 'p1', saves: 0 })).toBe('Free floor beside bed A');
    const names = [...keys.map(of), priceName(home, { rule: 'strips', piece: 'p1', saves: 0 })];
    expect(new Set(names).size).toBe(names.length);
  });

  it('is a dose a day, or nothing', () => {
    expect(priceText(home, 0.123)).toBe('0.12 µT·h a day');
    expect(priceText(home, 0)).toBe('costs nothing');
  });
});

it.each([
  [[], ''],
  [['a'], 'a'],
  [['a', 'b'], 'a and b'],
  [['a', 'b', 'c'], 'a, b and c'],
])('%j is told as “%s”', (names, text) => expect(listText(names)).toBe(text));
