import { distanceToRing } from './box';
import type { BrokenRule } from './rules';
import type { Site } from './site';
import type { Stand } from './stand';

/** A rule of its room that a stand breaks, with what is left between it and what it stands too near to. */
export function withMetresLeft({ foot }: Stand, site: Site, rule: BrokenRule): BrokenRule {
  const { kind } = rule;
  if (kind !== 'near-radiator' && kind !== 'cot-near-heat' && kind !== 'cot-near-window') return rule;
  const ring = [...site.fixtures, ...site.windows].find(({ id }) => id === rule.with)?.ring;
  return ring ? { ...rule, metres: distanceToRing(foot, ring) } : rule;
}
