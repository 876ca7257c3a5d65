import type { AssessRequest, Assessment, PieceDose } from '../engine/assess';
import type { Answer, Proposal } from '../engine/arranging/arrange';
import type { RulePrice } from '../engine/arranging/prices';
import type { BrokenRule } from '../engine/arranging/rules';
import type { GoodArea } from '../engine/arranging/goodArea';
import type { Put } from '../engine/arranging/place';
import type { RuleShapes } from '../engine/arranging/ruleShapes';
import type { ZoneDose } from '../engine/dose/dose';
import type { ArrangeWishes } from '../home/questions/arrangeQuestion';
import type { Home, Id, Point, Ref } from '../home/home';
import type { NextAsk } from '../home/questions/nextQuestion';
import type { ReadingPlace } from '../engine/arranging/placesToRead';
import type { NextReadings } from '../engine/nextReadings/request';
import type { Edit } from '../home/edits/edit';
import type { Problem } from '../home/problem';
import type { Trying } from './trying';
import type { UnmarkedSource } from '../engine/mapping/sourceSampling/unmarkedSources';

/** The six stages of the job. */
export type Stage = 'sketch' | 'survey' | 'map' | 'judge' | 'arrange' | 'report';

/** What a listener can follow. One topic per rate of change. */
export type Topic =
  | 'home'
  | 'view'
  | 'selection'
  | 'tool'
  | 'camera'
  | 'overlay'
  | 'pointer'
  | 'results'
  | 'proposal'
  | 'tried'
  | 'atHand'
  | 'next'
  | 'shelf'
  | 'notice';

export type ToolName =
  'select' | 'pan' | 'room' | 'opening' | 'fixture' | 'piece' | 'source' | 'reading' | 'walk' | 'scale';

/** What a tool is loaded with, from the key of signs: which opening, which size of bed. */
export interface ToolLoad {
  room?: { by: 'drag' | 'corners'; use?: string };
  opening?: { kind: 'door' | 'window' | 'gap'; width?: number };
  fixture?: { kind: 'wardrobe' | 'radiator' | 'chimney' | 'other' };
  piece?: { kind: 'bed' | 'cot' | 'desk' | 'seat' | 'other'; name: string; size: [number, number] };
  source?: { kind: 'line' | 'point'; name: string };
}

export interface View {
  stage: Stage;
  level: Id;
  round: Id;
}

/** Plan → screen: x = (px − centre.x)·scale + width/2; y = height/2 − (py − centre.y)·scale. */
export interface Camera {
  centre: Point;
  /** CSS pixels per metre. */
  scale: number;
  width: number;
  height: number;
}

export interface PointerInput {
  id: number;
  type: 'mouse' | 'pen' | 'touch';
  /** CSS pixels from the canvas's upper left corner. */
  x: number;
  y: number;
  button: number;
  shift: boolean;
  alt: boolean;
  /** Ctrl or Meta. */
  command: boolean;
  time: number;
}

export interface KeyInput {
  key: string;
  shift: boolean;
  alt: boolean;
  command: boolean;
}

/** What a tool shows while it works, in plan coordinates; painters know how each looks. */
export type Mark =
  | { mark: 'ring'; points: Point[]; state: 'drawing' | 'broken' }
  | { mark: 'path'; points: Point[]; closed: boolean }
  | { mark: 'corner'; at: Point; snapped: boolean }
  | { mark: 'guide'; from: Point; to: Point }
  | { mark: 'length'; from: Point; to: Point; text: string }
  | { mark: 'handle'; at: Point; role: 'corner' | 'middle' | 'end' | 'turn'; key: string }
  | { mark: 'lasso'; from: Point; to: Point }
  | { mark: 'pointed'; points: readonly Point[] }
  /** `over`: a reading lies under it, and its value beside it. */
  | { mark: 'aim'; at: Point; over: boolean }
  | { mark: 'note'; at: Point; lines: string[] };

/** The estimate under the pointer, µT, or why there is none. */
export interface Probe {
  at: Point;
  value: number | null;
  low: number | null;
  high: number | null;
  supported: boolean;
  reason: 'wide' | 'far' | 'few' | 'outside' | null;
  /** Metres to the nearest reading, null without readings. */
  nearest: number | null;
  /** Index of the band the value lies in, −1 below the lowest edge; null without value. */
  band: number | null;
}

type Running = 'idle' | 'running';

export interface Results {
  state: Running;
  /** 0…1 while running. */
  progress: number;
  /** Share done of the sampling that will draw the map anew; null where none is under way. */
  sampling: number | null;
  /** The last whole answer; it stays while a new one is worked out. */
  assessment: Assessment | null;
  request: AssessRequest | null;
  /** True when the home has changed since the assessment's inputs. */
  stale: boolean;
  /** Why there is no assessment. */
  problem: Problem | null;
  /** Live doses of pieces being dragged, by id. */
  live: Record<Id, PieceDose>;
}

/** Pieces of the answer that is looked at, put elsewhere by hand. It is of this sitting: no home and no file knows of it. */
export interface Adjusted {
  /** The pieces that no longer stand where the planner has them. */
  byHand: readonly Id[];
  /**
   * The whole answer with every piece where it stands now. Places, and the rules that pieces put by hand break (`breaks`),
   * are those of the moment; doses and all else are of the moment before while `judging`.
   */
  answer: Answer;
  judging: boolean;
}

/** The best answer, 0; the alternatives, from 1; or the one for which something is given up. */
export type Shown = number | 'relaxed';

export interface ProposalState {
  state: Running;
  progress: number;
  /** The least dose met by the search under way: µT·h a day as it is planned, mean over people or of the worst off. */
  least: number | null;
  proposal: Proposal | null;
  /** The home that the proposal was asked of: the one it is told with once the home has changed since. */
  askedOf: Home | null;
  stale: boolean;
  problem: Problem | null;
  wishes: ArrangeWishes;
  /** Which answer is looked at as ghosts; `shownAnswer` has it as it stands, `plannersAnswer` without what was put by hand. */
  shown: Shown;
  /** What a person has changed of it; null where it stands as the planner has it. */
  adjusted: Adjusted | null;
}

/** What each rule of a livable room costs in dose, worked out when somebody asks. */
export interface PricesState {
  state: Running;
  progress: number;
  /** Dearest first. */
  prices: readonly RulePrice[] | null;
  /** The home has changed since. */
  stale: boolean;
  problem: Problem | null;
}

/** The planning of furniture: an answer is asked for, looked at, and taken or left. */
export interface Arranging {
  readonly state: ProposalState;
  /** An answer will be asked for by itself, once the map stands. */
  readonly waits: boolean;
  /** Wishes not named stay as they were. */
  ask(wishes?: Partial<ArrangeWishes>): void;
  cancel(): void;
  /** Looks at another answer; what was put by hand in the one before is let go. */
  show(which: Shown): void;
  /** Puts every piece back where the planner has it. */
  backToPlanner(): void;
  /**
   * Makes one step of history of the answer as it stands, or returns why it could not. Rules that somebody broke by hand
   * are that person's choice; an answer of the planner's own is looked over once more.
   */
  take(): Problem | null;
  leave(): void;
  readonly prices: PricesState;
  askPrices(): void;
  cancelPrices(): void;
}

/** The rules, hard or preferred, that each piece breaks where it is shown; pieces that break none are not named. */
export type Broken = Readonly<Record<Id, readonly BrokenRule[]>>;

/** The piece that is selected or carried where furniture is arranged, where it is shown. */
export interface AtHand {
  id: Id;
  put: Put;
  broken: readonly BrokenRule[];
  /** The rules of its room on the plan; null outside all rooms. */
  shapes: RuleShapes | null;
  /** µT·h a day of those who use it; null where nobody does, or nothing is known yet. While it is carried, of a moment ago. */
  dose: Pick<ZoneDose, 'dose' | 'low' | 'high'> | null;
  /** What is to be said of its place is said beside it: it is being carried, or has just been moved by a key. */
  told: boolean;
  /** Its dose at every place where it may stand, turned as it is. */
  area: GoodArea | null;
}

/** What the list of places to read is for; or the places themselves, where an answer has named them. */
export type AskedPlaces = NextAsk | { kind: 'given'; places: readonly ReadingPlace[] };

/** Where to read next: what for, and the places by rank, worked out anew with every map while somebody wants them. */
export interface NextState {
  ask: AskedPlaces | null;
  state: Running;
  progress: number;
  /** The last answer; it stays while a new one is worked out. */
  answer: NextReadings | null;
  stale: boolean;
  problem: Problem | null;
  /** Rank from 0 of the place that is chosen in the list or on the plan. */
  picked: number | null;
}

export interface HomeSummary {
  id: string;
  title: string;
  savedAt: number;
}

/** The homes kept on this device, and the file of the one at hand. */
export interface Shelf {
  readonly current: string;
  readonly homes: readonly HomeSummary[];
  readonly saving: { state: 'saved' | 'saving' | 'failed'; at: number | null; problem: Problem | null };
  /** False in a tab that may only read, since another one writes. */
  readonly writes: boolean;
  takeOver(): Promise<void>;
  open(id: string): Promise<void>;
  /** Starts an empty home, or one from a parsed file or sample. */
  begin(home?: Home): Promise<void>;
  /** Opens the text of a home file; the current home stays as it was where the text is bad. */
  read(text: string, fileName: string): Promise<Problem | null>;
  /** The text and name of a file of the current home. */
  write(): { text: string; fileName: string };
  remove(id: string): Promise<void>;
  /** Saves at once (page hidden). */
  flush(): Promise<void>;
  /** Readings since the person last kept a file. */
  readonly unkept: number;
}

export interface Notice {
  text: Problem;
  tone: 'plain' | 'problem';
}

/** The running session of one home. Views read from it, and change the home through it only. */
export interface Editor {
  /** Settles when the last home has been opened from this device, or the first visit's is laid out. */
  readonly ready: Promise<void>;
  readonly home: Home;
  readonly revision: number;
  /** The only way to change a home. Returns the reason where the edit was refused; an empty change leaves no trace. */
  run(edit: Edit): Problem | null;
  undo(): void;
  redo(): void;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Opens a gesture: everything until `commit` is one step; `bail` takes it back. */
  mark(name: string): void;
  commit(): void;
  bail(): void;
  /** The pointer on the sheet moves something: the home changes with every move, and is not meant yet. */
  readonly carrying: boolean;

  readonly view: View;
  setStage(stage: Stage): void;
  setLevel(level: Id): void;
  setRound(round: Id): void;

  readonly selection: readonly Ref[];
  select(refs: readonly Ref[]): void;
  readonly hover: Ref | null;
  hoverOver(ref: Ref | null): void;
  /** The band lit from the ruler or the plan, by index of band edges; −1 below the lowest. */
  readonly litBand: number | null;
  lightBand(band: number | null): void;

  readonly tool: ToolName;
  readonly load: ToolLoad;
  useTool(tool: ToolName, load?: ToolLoad): void;
  readonly overlay: readonly Mark[];
  /** Shows which wall a field, or which place a row, speaks of; null for none. */
  pointOut(path: readonly Point[] | null): void;
  /** The likely unmarked source that is looked at. */
  readonly suspect: UnmarkedSource | null;
  chooseSuspect(suspect: UnmarkedSource | null): void;
  /** Where the next reading stands: placed by a tap, or the middle of the plan on a phone. */
  readonly readingPlace: Point | null;
  setReadingPlace(at: Point | null): void;
  /** The two points of a backdrop that wait for their true distance, and the way to give it. */
  readonly scaleLine: readonly [Point, Point] | null;
  scaleTo(metres: number): Problem | null;

  readonly camera: Camera;
  resize(width: number, height: number): void;
  zoomBy(factor: number, at?: Point): void;
  panBy(dx: number, dy: number): void;
  showAll(): void;

  readonly pointer: {
    down(input: PointerInput): void;
    move(input: PointerInput): void;
    up(input: PointerInput): void;
    cancel(input: PointerInput): void;
    leave(): void;
    wheel(input: PointerInput & { dx: number; dy: number; pinch: boolean }): void;
    doubleClick(input: PointerInput): void;
  };
  /** True where the key was used. */
  key(input: KeyInput): boolean;
  /** The space bar was let go: the hand is put away. */
  keyUp(input: KeyInput): void;
  readonly cursor: string;
  readonly probe: Probe | null;
  /** The estimate at a place of the current level (caught at entry, keyboard probe). */
  estimateAt(at: Point, height?: number): Probe;

  readonly results: Results;
  cancelAssessment(): void;
  /** Stay with the map that was there at once. */
  stopSampling(): void;
  /** Sample after all what was stopped. */
  startSampling(): void;

  readonly arranging: Arranging;
  /** What would be with sources off, weaker or elsewhere. Results are then of that map; `measured` are not. */
  readonly trying: Trying;
  readonly measured: Results;
  /** Null where no one piece is selected, or another stage is worked at. */
  readonly atHand: AtHand | null;
  readonly broken: Broken;

  readonly next: NextState;
  /** What further readings are to make surer; null: no list any more. */
  askNext(what: AskedPlaces | null): void;
  pickNext(rank: number | null): void;

  readonly shelf: Shelf;
  readonly notice: Notice | null;
  say(notice: Notice | null): void;

  subscribe(topic: Topic, listener: () => void): () => void;
  destroy(): void;
}
