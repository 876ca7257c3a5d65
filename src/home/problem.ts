import type { Fault } from '../engine/arranging/check/checkArrangement';
import type { WithoutSources } from '../engine/whatIf/whatIf';
import type { BrokenRule } from '../engine/arranging/rules';
import type { Collection, Id, Point } from './home';

/** Where in a home something is wrong: `['rooms', 'r3', 'outline', 2]`. */
export type Path = readonly (string | number)[];

/** What a field of the home file should have held. */
export type Expected =
  | { is: 'type'; type: 'number' | 'whole number' | 'text' | 'yes or no' | 'list' | 'object' }
  | { is: 'one of'; values: readonly (string | number)[] }
  | { is: 'least'; of: 'number' | 'text' | 'list'; limit: number; inclusive: boolean }
  | { is: 'most'; of: 'number' | 'text' | 'list'; limit: number; inclusive: boolean }
  | { is: 'format'; format: Format };

export type Format = 'id' | 'date' | 'time' | 'clock' | 'picture' | 'letters';

/** The text is not a home file at all, or not one this version reads. */
export type FileProblem =
  | { kind: 'file-too-large'; bytes: number; limit: number }
  | { kind: 'file-empty' }
  | { kind: 'file-binary'; picture: boolean }
  | { kind: 'file-cut-short'; line: number; after: string }
  | { kind: 'file-not-json'; line: number; column: number; near: string }
  | { kind: 'file-foreign'; format: unknown }
  | { kind: 'file-newer'; version: number; known: number }
  | { kind: 'file-version'; version: unknown; known: number };

/** A field of the file or of a change is missing, unknown or wrong. `id` names the thing it belongs to. */
export type FieldProblem =
  | { kind: 'field-missing'; path: Path; id: Id | null; expected: Expected }
  | { kind: 'field-unknown'; path: Path; id: Id | null; value: unknown; nearest: string | null }
  | { kind: 'field-wrong'; path: Path; id: Id | null; value: unknown; expected: Expected }
  | { kind: 'more-problems'; count: number };

/** Each field is fine by itself, but the parts do not fit together. */
export type IntegrityProblem =
  | { kind: 'id-twice'; path: Path; id: Id; first: Path }
  | { kind: 'points-nowhere'; path: Path; id: Id; wanted: Collection; have: readonly Id[] }
  | { kind: 'too-many'; path: Path; count: number; limit: number }
  | { kind: 'outline-short'; path: Path; corners: number; least: number }
  | { kind: 'outline-crosses'; path: Path; first: number; second: number; at: Point }
  | { kind: 'outline-flat'; path: Path }
  | { kind: 'path-corners'; path: Path; points: number; least: number; most: number }
  | { kind: 'no-such-wall'; path: Path; wall: number; walls: number }
  | { kind: 'wider-than-wall'; path: Path; width: number; wallLength: number }
  | { kind: 'beyond-wall'; path: Path; offset: number; width: number; wallLength: number }
  | { kind: 'low-above-high'; path: Path; low: number; high: number }
  | { kind: 'out-of-order'; path: Path; index: number }
  | { kind: 'picture-too-large'; path: Path; bytes: number; limit: number }
  | { kind: 'compared-with-itself'; path: Path };

/** An edit cannot be done. */
export type EditProblem =
  | { kind: 'not-there'; collection: Collection; id: Id }
  | { kind: 'last-one'; collection: 'levels' | 'rounds' }
  | { kind: 'no-corners'; path: Path }
  | { kind: 'no-such-corner'; path: Path; corner: number }
  | { kind: 'field-not-changeable'; path: Path }
  | { kind: 'reading-not-copied'; id: Id }
  | { kind: 'nothing-to-surround' };

/** Where homes are kept. */
type StorageProblem =
  | { kind: 'storage-full' }
  | { kind: 'storage-refused'; detail: string }
  | { kind: 'storage-absent' }
  | { kind: 'storage-read-only' }
  | { kind: 'home-missing'; id: string }
  | { kind: 'file-not-taken'; fileName: string }
  | { kind: 'file-unreadable'; fileName: string; detail: string }
  /** A home file with problems; the home that was open stays as it was. */
  | { kind: 'file-bad'; fileName: string; problems: readonly Problem[] };

/** What a person typed is not a quantity. `words/quantities` has the sentences. */
export type QuantityProblem =
  | { kind: 'quantity-empty'; of: 'field' | 'length' }
  | { kind: 'not-a-field'; text: string }
  | { kind: 'not-a-length'; text: string }
  | { kind: 'unknown-unit'; of: 'field' | 'length'; text: string; unit: string }
  | { kind: 'unit-missing'; text: string }
  | { kind: 'comma-ambiguous'; text: string; point: string; whole: string }
  | { kind: 'quantity-negative'; of: 'field' | 'length'; text: string }
  | { kind: 'length-zero'; text: string };

/** A gesture on the plan came to nothing. */
type DrawingProblem =
  | { kind: 'no-wall-near' }
  | { kind: 'opening-too-wide'; width: number; wallLength: number }
  | { kind: 'outline-too-small' }
  | { kind: 'only-a-line' }
  | { kind: 'scale-out-of-reach'; metres: number; least: number; most: number }
  | { kind: 'no-backdrop' };

/** There is no map yet, or it could not be worked out. */
type SurveyProblem =
  | { kind: 'too-few-readings'; have: number; need: number }
  | { kind: 'work-failed'; detail: string }
  | { kind: 'work-cancelled' };

/** There is no arrangement. */
type ArrangementProblem =
  | { kind: 'nothing-to-arrange' }
  | { kind: 'no-map-to-arrange-on' }
  | { kind: 'nothing-fits'; pieces: readonly Id[] }
  | { kind: 'proposal-stale' }
  /** A second look found places that a proposal must not have; piece and room by their names. */
  | { kind: 'places-faulty'; faults: readonly { piece: string; room: string; rule: Fault['rule'] }[] }
  /** The map knows no sources: it cannot say what would be with one of them off. */
  | WithoutSources
  /** A place that was proposed breaks rules of the room as it is now; the piece, and what is in its way, by their names. */
  | { kind: 'rules-broken'; piece: string; rules: readonly BrokenRule[] };

/** Everything that can go wrong and reaches a person. `words/problems` has the sentence of each. */
export type Problem =
  | FileProblem
  | FieldProblem
  | IntegrityProblem
  | EditProblem
  | StorageProblem
  | QuantityProblem
  | DrawingProblem
  | SurveyProblem
  | ArrangementProblem;
