import { RULE_DEFAULTS } from '../engine/arranging/ruleSettings';
import type { Home } from './home';

/** An empty home: one level at street height, one round, nothing drawn. */
export function newHome(title = 'New home'): Home {
  return {
    title,
    north: 0,
    settings: {
      fieldUnit: 'uT',
      lengthUnit: 'm',
      mains: 50,
      mapHeight: 1,
      guideline: 'common-practice',
      target: 0.1,
      method: 'auto',
      night: ['22:00', '07:00'],
      base: null,
      rules: RULE_DEFAULTS,
    },
    levels: { l1: { id: 'l1', name: 'Ground floor', elevation: 0, backdrop: null } },
    rooms: {},
    openings: {},
    fixtures: {},
    pieces: {},
    sources: {},
    meters: {},
    rounds: { a: { id: 'a', name: 'As found', kind: 'asFound', date: null, note: '' } },
    walks: {},
    readings: {},
    recordings: {},
    comparisons: {},
    arrangements: {},
    guidelines: {},
    report: { preparedFor: '', by: '', address: '', date: null, purpose: '', findings: '', advice: '' },
    lastIds: { l: 1, round: 1 },
  };
}
