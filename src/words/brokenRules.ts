import { COT_KEEPS } from '../engine/arranging/ruleSettings';
import type { BrokenRule, RuleKind } from '../engine/arranging/rules';
import type { Home, Id, Piece } from '../home/home';
import { roomAt } from '../home/questions/roomAt';
import { roomsBeside } from '../home/questions/roomsBeside';
import { ruleSentence } from './arranging';
import { pieceLetters, pieceShort, wordLines } from './canvas';
import { countText, fixedText, lengthText } from './numbers';
import { FIXTURE_WORDS, lowerFirst, roomName, thingName } from './things';

/**
 * Which rule a piece breaks, what against, and by how much, as a sentence about 'it'. `piece` is the piece where it is meant to
 * stand.
 */
export function brokenRuleText(home: Home, piece: Piece, rule: BrokenRule): string {
  // Nobody said what against: the walls of a room, or nothing in particular.
  if (rule.with === null && rule.kind !== 'access' && rule.kind !== 'back-off-wall')
    return ruleSentence(rule, null);
  const { rules, lengthUnit } = home.settings;
  const length = (metres: number) =>
    lengthText(metres, lengthUnit, Math.abs(metres * 10 - Math.round(metres * 10)) < 1e-6 ? 1 : 2);
  const it = rule.with === null ? 'something' : nameOf(home, piece, rule.with);
  const near = (who: string, keeps: number) =>
    rule.metres !== undefined && rule.metres < TOUCHES
      ? `It would touch ${it}; ${who} keeps ${length(keeps)}.`
      : rule.metres !== undefined
        ? `It would stand ${lengthText(rule.metres, lengthUnit)} from ${it}; ${who} keeps ${length(keeps)}.`
        : `It would stand too near ${it}; ${who} keeps ${length(keeps)}.`;
  switch (rule.kind) {
    case 'wrong-room':
      return `It is not to stand in ${it}.`;
    case 'in-door-swing':
      return `${upperFirst(it)} would strike it.`;
    case 'before-door':
      return `It would stand before ${it}; ${length(rules.landing)} is kept free there.`;
    case 'head-across-door':
      return `Its head would stand across ${it}.`;
    case 'head-under-window':
      return `Its head would lie under ${it}.`;
    case 'back-off-wall':
      return rules.deskSideways ? ruleSentence(rule, null) : 'It has no wall behind it.';
    case 'access':
      return rule.with === null
        ? `The walls leave less than ${stripText(piece, length)} beside it.`
        : `${upperFirst(it)} takes some of the ${stripText(piece, length)} beside it.`;
    case 'near-radiator':
      return near('a bed', rules.bedToRadiator);
    case 'cot-near-heat':
      return near('a cot', COT_KEEPS.fromHeat);
    case 'cot-near-window':
      return near('a cot', COT_KEEPS.fromWindow);
    case 'cot-near-piece':
      return near('a cot', COT_KEEPS.fromPiece);
    case 'access-taken':
      return `It and ${it} would stand in each other’s way.`;
    case 'two-doubles':
      return `It and ${it} are beds for two; one room takes one.`;
    case 'no-way':
      return rule.with === piece.id
        ? `No way of ${length(rules.path)} would be left to a side it is used from.`
        : `No way of ${length(rules.path)} would be left to ${it}.`;
    case 'wardrobe-front':
      return `It would stand before ${it}; ${length(rules.wardrobe)} is kept free there.`;
    default:
      return ruleSentence(rule, rule.with === null ? null : it);
  }
}

/** Nearer than this nobody would speak of a gap, metres. */
const TOUCHES = 0.01;

/** What a rule is broken against, as in a sentence: 'the door to the hall', 'the built-in wardrobe', 'bed A'. */
function nameOf(home: Home, piece: Piece, id: Id): string {
  if (pieceLetters(home)[id]) return pieceShort(home, id);
  if (id in home.pieces) return `the ${lowerFirst(thingName(home, { kind: 'piece', id }))}`;
  if (id in home.rooms) return `the ${lowerFirst(roomName(home, id))}`;
  const fixture = home.fixtures[id];
  if (fixture) return `the ${lowerFirst(fixture.name || FIXTURE_WORDS[fixture.kind])}`;
  const opening = home.openings[id];
  if (!opening) return 'something';
  if (opening.kind === 'window') return 'the window';
  const here = roomAt(home, piece.level, piece.at)?.id;
  const beyond = roomsBeside(home, opening).find((room) => room && room.id !== here);
  return beyond?.name ? `the ${opening.kind} to the ${lowerFirst(beyond.name)}` : `the ${opening.kind}`;
}

/** '0.75 m', or both ends where the sides ask for different strips. */
function stripText({ access }: Piece, length: (metres: number) => string): string {
  const asked = [access.left, access.right, access.foot].filter((metres) => metres > 0).sort((a, b) => a - b);
  const [least, most] = [asked[0] ?? 0, asked.at(-1) ?? 0];
  return least === most ? length(most) : `${length(least)} to ${length(most)}`;
}

const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** 'breaks 2 rules': beside a piece in a list; which ones is told when it is opened. */
export const breaksText = (count: number): string => `breaks ${countText(count, 'rule')}`;

/** What any piece breaks on its way through a room: said where there is nothing else to say. */
const OFF_WALL: readonly RuleKind[] = ['head-off-wall', 'back-off-wall'];

/** Two lines beside the pointer, of no more than so many letters: one rule broken, and how many more there are. */
export function brokenLines(
  home: Home,
  piece: Piece,
  broken: readonly BrokenRule[],
  letters: number,
): string[] {
  const first = broken.find(({ kind }) => !OFF_WALL.includes(kind)) ?? broken[0];
  if (!first) return [];
  const lines = wordLines(brokenRuleText(home, piece, first), letters);
  const more = broken.length - 1;
  if (more === 0 || lines.length > 1) return lines;
  return [...lines, more === 1 ? 'And one more rule.' : `And ${fixedText(more, 0)} more rules.`];
}
