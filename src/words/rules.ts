import { COT_KEEPS, RULE_DEFAULTS, type RuleSettings } from '../engine/arranging/ruleSettings';
import type { RulePrice } from '../engine/arranging/prices';
import type { Home, LengthUnit, Piece } from '../home/home';
import { pieceShort } from './canvas';
import { doseWithUnit, lengthText } from './numbers';

type OfType<T> = {
  [Rule in keyof RuleSettings]: RuleSettings[Rule] extends T ? Rule : never;
}[keyof RuleSettings];
/** A rule that is a length. */
export type MeasureRule = OfType<number>;
/** A rule that holds or does not. */
export type SwitchRule = OfType<boolean>;

export const ruleWords = {
  title: (changed: number) => `Rules of a livable room${changed > 0 ? `, ${changed} changed` : ''}`,
  lead: 'Inside these the least dose is looked for. Lengths and switches without a source are this tool’s own choice.',
  setBack: 'set it back',
  strips: 'Free floor beside each piece',
  stripsNote:
    'Beds after Approved Document M, volume 1 (2015), M4(2): 0.75 m at both sides and the foot of a principal double, at one side and the foot of another double, at one side of a single. Cot, desk and seat: this tool’s choice. Left and right may change places.',
  toStrips: (name: string) => `change those of ${name}`,
  fixed: 'Always',
  prices: 'What does each rule cost?',
  pricesNote: 'Each rule by itself lowered as far as it may be, and the home arranged anew.',
  pricesAgain: 'Work the prices out again',
  pricing: 'Arranging the home once for each rule…',
  pricesStale: 'The home has changed since these were worked out.',
  noPrices: 'Not every piece finds a place as it is, so no rule has a price.',
};

const RULES: Record<keyof RuleSettings, { name: string; note: string }> = {
  landing: {
    name: 'Before a door or gap, both sides',
    note: 'No piece stands there; its strips may.',
  },
  path: {
    name: 'Width of the way',
    note: 'From a door to every side that is used, and from door to door.',
  },
  wardrobe: {
    name: 'Before a wardrobe’s doors',
    note: 'Kept where it can be; 0 asks for nothing.',
  },
  bedToRadiator: {
    name: 'From a bed to a radiator',
    note: 'Kept where it can be; 0 asks for nothing.',
  },
  headClearOfWindow: { name: 'No head under a window', note: 'Kept where it can be.' },
  oneDouble: { name: 'One bed for two in a room', note: 'A second bed for two goes to another room.' },
  deskSideways: {
    name: 'A desk may stand with its side to the wall',
    note: 'Otherwise its back stands there.',
  },
};

export const ruleName = (rule: keyof RuleSettings): string => RULES[rule].name;
export const ruleNote = (rule: keyof RuleSettings): string => RULES[rule].note;

/** How many rules are not as this tool has them. */
export const changedRules = (rules: RuleSettings): (keyof RuleSettings)[] =>
  (Object.keys(RULE_DEFAULTS) as (keyof RuleSettings)[]).filter(
    (rule) => rules[rule] !== RULE_DEFAULTS[rule],
  );

/** 'Otherwise 0.60 m.', 'Otherwise on.' */
export function defaultText(rule: keyof RuleSettings, unit: LengthUnit): string {
  return `Otherwise ${settingText(RULE_DEFAULTS[rule], unit)}.`;
}

const settingText = (value: number | boolean, unit: LengthUnit): string =>
  typeof value === 'number' ? lengthText(value, unit) : value ? 'on' : 'off';

/** 'before a door or gap, both sides: 0.30 m instead of 0.60 m'; what was changed, for the report. */
export function changedText(rule: keyof RuleSettings, rules: RuleSettings, unit: LengthUnit): string {
  const { name } = RULES[rule];
  const head = `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
  return `${head}: ${settingText(rules[rule], unit)} instead of ${settingText(RULE_DEFAULTS[rule], unit)}`;
}

/** What holds whatever is set, and where it comes from. */
export function fixedRules(unit: LengthUnit): { rule: string; source: string }[] {
  const [heat, piece] = [COT_KEEPS.fromHeat, COT_KEEPS.fromPiece].map((metres) => lengthText(metres, unit));
  return [
    {
      rule: `A cot stands ${heat} from radiators and windows and ${piece} from other pieces. Cords are not drawn: keep them out of its reach.`,
      source:
        'After the advice for infants in AAP News (2006); the distances are this tool’s choice. Never given up.',
    },
    {
      rule: 'From every sleeping room a window to escape by can be reached.',
      source: 'Where the bare room has it. Never given up.',
    },
    {
      rule: 'Every door can be reached, and every piece that is used; no door strikes a piece.',
      source: 'Where the bare room has it; how wide the way is, is set above. Never given up.',
    },
    {
      rule: 'A piece stands inside the walls, off what is fixed and off other pieces. The head of a bed lies wholly at one wall, never across a door or gap.',
      source: 'This tool’s choice.',
    },
    {
      rule: 'Where a body lies or sits the map is drawn, all but a twentieth of it.',
      source: 'This tool’s choice: hatched floor has no dose to compare.',
    },
  ];
}

/** Why a length is no rule. */
export const tooLittleSentence = (typed: string, least: number, unit: LengthUnit): string =>
  `“${typed}” leaves no way out. Write ${lengthText(least, unit)} or more.`;
export const tooMuchSentence = (typed: string, most: number, unit: LengthUnit): string =>
  `“${typed}” is more than a room has. Write ${lengthText(most, unit)} or less.`;

/** '0.75 m left, right and foot', or that nothing is asked for. */
export function stripsText({ kind, access }: Pick<Piece, 'kind' | 'access'>, unit: LengthUnit): string {
  const foot = kind === 'bed' || kind === 'cot' ? 'at the foot' : 'where one sits';
  const sides = (
    [
      ['at the left', access.left],
      ['at the right', access.right],
      [foot, access.foot],
    ] as const
  ).filter(([, metres]) => metres > 0);
  if (sides.length === 0) return 'none asked for';
  return [...new Set(sides.map(([, metres]) => metres))]
    .map((metres) => {
      const names = sides.filter(([, own]) => own === metres).map(([name]) => name);
      return `${lengthText(metres, unit)} ${listText(names)}`;
    })
    .join(', ');
}

/** 'a', 'a and b', 'a, b and c' */
export const listText = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;

/** What a rule's price is called: the rule with its length, or whose strips. */
export function priceName(home: Home, { rule, piece }: RulePrice): string {
  if (rule === 'strips') return `Free floor beside ${piece ? pieceShort(home, piece) : 'a piece'}`;
  const value = home.settings.rules[rule];
  return typeof value === 'number'
    ? `${RULES[rule].name}, ${lengthText(value, home.settings.lengthUnit)}`
    : rule === 'deskSideways'
      ? 'A desk stands with its back to the wall'
      : RULES[rule].name;
}

/** '0.12 µT·h a day' */
export const priceText = (home: Home, saves: number): string =>
  saves > 0 ? `${doseWithUnit(saves, home.settings.fieldUnit)} a day` : 'costs nothing';
