import type { GoodArea } from '../../engine/arranging/goodArea';
import type { LevelPicture } from '../../engine/assess';
import type { Editor, View } from '../../editor/editor';
import type { Backdrop, Home, Id, Piece, Reading } from '../../home/home';
import { firstOf, inOrder } from '../../home/order';
import { shownAnswer } from '../../editor/shownAnswer';
import { suspectsShown } from '../../editor/suspects';
import type { UnmarkedSource } from '../../engine/mapping/sourceSampling/unmarkedSources';
import type { Form } from '../layout.svelte';
import { keepLast, keepSame } from '../../editor/keepLast';
import { pictureLines, targetLines, type DrawnContour } from './pictureLines';
import type { ContourLine } from './drawing/contourLines';
import { planGeometry, type PlanGeometry } from './planGeometry';
import { SHOWN } from './shown';

/** All that is painted, read from the editor at one moment. Everything in it is immutable. */
export interface Scene {
  home: Home;
  view: View;
  camera: Editor['camera'];
  form: Form;
  plan: PlanGeometry;
  /** The picture being traced, while sketching. */
  backdrop: Backdrop | null;
  /** The estimate of the level shown, or null; ink would hide a backdrop. */
  picture: LevelPicture | null;
  contours: readonly DrawnContour[];
  target: readonly ContourLine[];
  lettered: Lettered;
  results: Editor['results'];
  /** Likely unmarked sources of the level, and the one that is looked at. */
  suspects: readonly UnmarkedSource[];
  suspect: UnmarkedSource | null;
  proposal: Editor['arranging']['state'];
  atHand: Editor['atHand'];
  broken: Editor['broken'];
  good: GoodHere | null;
  /** Sources that are off, weaker or elsewhere to see what would be. */
  tried: Editor['trying']['changes'];
  next: Editor['next'];
  selection: Editor['selection'];
  hover: Editor['hover'];
  litBand: Editor['litBand'];
  overlay: Editor['overlay'];
  probe: Editor['probe'];
  tool: Editor['tool'];
  /** How far ghosts have come along their ways, 0…1. */
  travel: number;
}

/** Where the piece at hand may stand on the level shown; there the ink is of the piece and no longer of the floor. */
export interface GoodHere {
  area: GoodArea;
  level: Id;
}

/** The lines that lettering goes by. While a picture follows the hand they are those of the last whole one. */
interface Lettered {
  picture: LevelPicture | null;
  contours: readonly DrawnContour[];
  target: readonly ContourLine[];
}

/** A reader of scenes that works out geometry only where its inputs have changed. */
export function createSceneReader(editor: Editor): (form: Form, travel?: number) => Scene {
  const plan = keepLast(
    (rooms: Home['rooms'], openings: Home['openings'], fixtures: Home['fixtures'], level: Id) =>
      planGeometry({ rooms, openings, fixtures }, level),
  );
  const contours = keepLast((picture: LevelPicture | null, target: number) =>
    picture ? pictureLines(picture, target) : [],
  );
  const target = keepLast((picture: LevelPicture | null, value: number) =>
    picture ? targetLines(picture, value) : [],
  );
  const letter = keepLast(
    (picture: LevelPicture | null, contours: Lettered['contours'], target: Lettered['target']): Lettered => ({
      picture,
      contours,
      target,
    }),
  );
  const suspects = keepLast(
    (
      sources: Home['sources'],
      assessment: Editor['results']['assessment'],
      stage: View['stage'],
      level: Id,
    ) => suspectsShown(sources, assessment, { stage, level }),
  );
  let lettered = letter(null, [], []);
  // Marks and probe are worked out at each asking.
  const overlay = keepSame<Editor['overlay']>();
  const probe = keepSame<Editor['probe']>();
  const good = keepLast((area: GoodArea | null, level: Id): GoodHere | null =>
    area?.rooms.some((one) => one.may.length > 0 && one.level === level) ? { area, level } : null,
  );
  const atHand = keepSame<Editor['atHand']>();
  const broken = keepSame<Editor['broken']>();
  return (form, travel = 1) => {
    const { home, view, results } = editor;
    const backdrop = view.stage === 'sketch' ? (home.levels[view.level]?.backdrop ?? null) : null;
    const drawn = results.assessment?.pictures.find(({ level }) => level === view.level) ?? null;
    const picture = backdrop ? null : drawn;
    const lines = {
      contours: contours(picture, home.settings.target),
      target: target(picture, home.settings.target),
    };
    if (!isRough(picture)) lettered = letter(picture, lines.contours, lines.target);
    const held = atHand(editor.atHand);
    return {
      home,
      view,
      form,
      backdrop,
      picture,
      results,
      camera: editor.camera,
      plan: plan(home.rooms, home.openings, home.fixtures, view.level),
      ...lines,
      lettered,
      suspects: suspects(home.sources, results.assessment, view.stage, view.level),
      suspect: editor.suspect,
      proposal: editor.arranging.state,
      atHand: held,
      good: good(held?.area ?? null, view.level),
      broken: broken(editor.broken),
      tried: editor.trying.changes,
      next: editor.next,
      selection: editor.selection,
      hover: editor.hover,
      litBand: editor.litBand,
      overlay: overlay(editor.overlay),
      probe: probe(editor.probe),
      tool: editor.tool,
      travel,
    };
  };
}

/** A picture that follows the hand: its contours come and go, and go without labels. */
export const isRough = (picture: LevelPicture | null): boolean => picture !== null && !picture.variance;

/** The things of one level, in their natural order. */
export function levelOf(home: Home, level: Id) {
  const here = <T extends { id: Id; level: Id }>(all: Record<Id, T>): T[] =>
    inOrder(all).filter((thing) => thing.level === level);
  return {
    rooms: here(home.rooms),
    pieces: here(home.pieces),
    sources: here(home.sources),
    walks: here(home.walks),
  };
}

/** The readings of the level and round shown; one without a round belongs to the first. */
export function roundReadings(home: Home, { level, round }: View): Reading[] {
  const first = firstOf(home.rounds)?.id;
  return inOrder(home.readings).filter(
    (reading) => reading.level === level && (reading.round ?? first) === round,
  );
}

/** A piece that a proposal moves: where it stands, and how it would stand. */
export interface Ghost {
  piece: Piece;
  ghost: Piece;
}

/** What the proposal moves to or from the level shown. */
export function ghostsOf({ home, view, proposal }: Pick<Scene, 'home' | 'view' | 'proposal'>): Ghost[] {
  const answer = SHOWN[view.stage].ghosts ? shownAnswer(proposal) : null;
  return (answer?.pieces ?? []).flatMap(({ id, level, at, angle, moves }): Ghost[] => {
    const piece = home.pieces[id];
    if (!piece || !moves || (level !== view.level && piece.level !== view.level)) return [];
    return [{ piece, ghost: { ...piece, level, at: [...at], angle } }];
  });
}
