import type { Answer } from '../engine/arranging/arrange';
import type { RuleKind } from '../engine/arranging/rules';
import type { Fixture, Home } from '../home/home';
import { listText } from './rules';

/** Preferences: what gives way where no place can keep it. `clear` where it is floor that is kept clear. */
const PREFERRED: readonly {
  kind: RuleKind;
  what: string;
  clear: boolean;
  isAsked(home: Home): boolean;
}[] = [
  {
    kind: 'wardrobe-front',
    what: 'the front of wardrobes',
    clear: true,
    isAsked: (home) => home.settings.rules.wardrobe > 0 && hasFixture(home, 'wardrobe'),
  },
  {
    kind: 'near-radiator',
    what: 'the floor beside radiators',
    clear: true,
    isAsked: (home) => home.settings.rules.bedToRadiator > 0 && hasFixture(home, 'radiator'),
  },
  {
    kind: 'head-under-window',
    what: 'no head under a window',
    clear: false,
    isAsked: ({ settings }) => settings.rules.headClearOfWindow,
  },
];

const hasFixture = ({ fixtures }: Home, kind: Fixture['kind']): boolean =>
  Object.values(fixtures).some((fixture) => fixture.kind === kind);

/** What this answer keeps clear, what it could not keep, and what holds of a cot where there is one. */
export function keptSentence(home: Home, { pieces }: Pick<Answer, 'pieces'>): string {
  const broken = new Set(pieces.flatMap(({ breaks }) => breaks.map(({ kind }) => kind)));
  const asked = PREFERRED.filter(({ isAsked }) => isAsked(home));
  const kept = asked.filter(({ kind, clear }) => clear && !broken.has(kind));
  const given = asked.filter(({ kind }) => broken.has(kind));
  const clear = ['the strips beside beds', 'door swings', 'landings', ...kept.map(({ what }) => what)];
  return [
    `Kept clear: ${listText(clear)}.`,
    given.length > 0
      ? `Kept where it can be, and not everywhere here: ${listText(given.map(({ what }) => what))}.`
      : '',
    Object.values(home.pieces).some(({ kind }) => kind === 'cot')
      ? 'A cot keeps away from windows and radiators, always.'
      : '',
  ]
    .filter(Boolean)
    .join(' ');
}
