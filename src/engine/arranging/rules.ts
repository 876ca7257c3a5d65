/** The rules of a livable room. */
export type RuleKind =
  | 'outside-room'
  | 'wrong-room'
  | 'on-fixture'
  | 'in-door-swing'
  | 'before-door'
  | 'head-off-wall'
  | 'head-across-door'
  | 'back-off-wall'
  | 'access'
  | 'near-radiator'
  | 'cot-near-heat'
  | 'cot-near-window'
  | 'unsupported'
  | 'overlap'
  | 'access-taken'
  | 'cot-near-piece'
  | 'two-doubles'
  | 'head-under-window'
  | 'wardrobe-front';

/** A rule that a place breaks, and what it breaks it against (an opening, fixture, piece or room), where there is one. */
export interface BrokenRule {
  kind: RuleKind;
  with: string | null;
}
