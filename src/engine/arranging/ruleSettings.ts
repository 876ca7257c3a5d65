/**
 * The rules of a livable room that a person may set or switch, each with the project's default. Lengths in metres. What
 * keeps a cot safe and an escape open is not among them: it always holds.
 */
export interface RuleSettings {
  /** Floor before a door or a gap that stays free, both sides. */
  landing: number;
  /** Width of the way from the doors to every used side of a piece, and from door to door. */
  path: number;
  /** Floor before a wardrobe's doors, kept where it can be; 0: not asked for. */
  wardrobe: number;
  /** From a bed to a radiator, kept where it can be; 0: not asked for. */
  bedToRadiator: number;
  /** No head under a window, where it can be. */
  headClearOfWindow: boolean;
  /** No two beds for two in one room. */
  oneDouble: boolean;
  /** A desk may stand with its side to the wall. */
  deskSideways: boolean;
}

/** The project's choice, all of them. */
export const RULE_DEFAULTS: RuleSettings = {
  landing: 0.6,
  path: 0.6,
  wardrobe: 0.7,
  bedToRadiator: 0.1,
  headClearOfWindow: true,
  oneDouble: true,
  deskSideways: false,
};

/** Less than this is no way out and no way through, whatever is asked for: the project's choice, metres. */
export const LEAST_LANDING = 0.3;
export const LEAST_PATH = 0.5;

/**
 * Metres a cot keeps: the project's choice after the published advice for infants (no cot beside a window, cord or radiator:
 * AAP News 2006). They are never lowered.
 */
export const COT_KEEPS = { fromHeat: 0.6, fromWindow: 0.6, fromPiece: 0.3 } as const;
