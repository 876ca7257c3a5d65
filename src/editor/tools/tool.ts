import type { Adjusting } from '../adjusting';
import type { TriedSources } from '../trying';
import type { Edit } from '../../home/edits/edit';
import type { Home, KindName, Point, Ref } from '../../home/home';
import type { Problem } from '../../home/problem';
import type { UnmarkedSource } from '../../engine/mapping/sourceSampling/unmarkedSources';
import type { Camera, KeyInput, Mark, PointerInput, ToolLoad, ToolName, View } from '../editor';

/** A pointer event as tools see it: on the plan, with its reach in metres. */
export interface Aim {
  at: Point;
  /** CSS pixels. */
  x: number;
  y: number;
  type: PointerInput['type'];
  shift: boolean;
  /** Held: nothing snaps. */
  alt: boolean;
  command: boolean;
  /** Metres within which a thing answers. */
  reach: number;
  /** Metres within which snapping pulls; 0 with alt. */
  pull: number;
  pressed: boolean;
}

/** What a hand changes: the home, or the answer that is looked at. */
export interface Subject {
  /** As the hand sees it. */
  readonly home: Home;
  run(edit: Edit): boolean;
  /** Within a gesture: the edit upon the home as it was at the mark. */
  redraw(edit: Edit): boolean;
  mark(name: string): void;
  commit(): void;
  bail(): void;
}

/** What a tool may use of the session. */
export interface Bench extends Subject {
  /** The answer that is looked at, where there is one: its pieces are moved, not the home's. */
  readonly answer: Adjusting;
  /** Sources that are moved to see what would be. */
  readonly tried: TriedSources;
  readonly view: View;
  readonly camera: Camera;
  readonly selection: readonly Ref[];
  readonly load: ToolLoad;
  readonly readingPlace: Point | null;
  hit(aim: Aim, kinds?: readonly KindName[]): Ref | null;
  /** The likely unmarked source that a tap means. */
  suspectAt(aim: Aim): UnmarkedSource | null;
  chooseSuspect(suspect: UnmarkedSource): void;
  /** The place to read next within reach, by rank from 0; null where none is, or none are shown. */
  planned(aim: Aim): { rank: number; at: Point } | null;
  pickNext(rank: number | null): void;
  select(refs: readonly Ref[]): void;
  hoverOver(ref: Ref | null): void;
  setReadingPlace(at: Point | null): void;
  say(problem: Problem): void;
  /** Takes up a tool; without a name, the one the stage is worked with. */
  takeUp(tool?: ToolName): void;
  panBy(dx: number, dy: number): void;
  /** The tool's marks have changed. */
  redrawOverlay(): void;
  lengthText(metres: number): string;
  /** Metres, or null where the text is no length. */
  parseLength(text: string): number | null;
}

/** One way of using the pointer. Events come normalised; a second finger or a lost pointer comes as `lose`. */
export interface Tool {
  readonly cursor: string;
  /** It sets something down where it is tapped, and has no use for a finger's drag. */
  readonly taps?: boolean;
  down(aim: Aim): void;
  move(aim: Aim): void;
  up(aim: Aim): void;
  doubleClick?(aim: Aim): void;
  /** True where the key was used. */
  key?(input: KeyInput): boolean;
  /** Takes back the last corner of something half drawn; false where there is none. */
  stepBack?(): boolean;
  /** The press under way is lost; what stood before it stays. Without it, a lost press is given up like anything else. */
  lose?(): void;
  /** Gives up what is under way. True where something was. */
  cancel(): boolean;
  marks(): Mark[];
}
