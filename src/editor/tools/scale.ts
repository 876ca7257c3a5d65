import { add, distance, scale, sub } from '../../engine/geometry/point';
import { change } from '../../home/edits/change';
import type { Point } from '../../home/home';
import type { Problem } from '../../home/problem';
import { createDraft } from './draft';
import type { Bench, Tool } from './tool';
import { createTyping } from './typing';

export interface ScaleTool extends Tool {
  /** The two points that were set, waiting for their true distance. */
  readonly line: readonly [Point, Point] | null;
  setLength(metres: number): Problem | null;
}

/** Metres between two points of a plan that a person can have measured. */
const LEAST = 0.1;
const MOST = 200;

/** Gives a backdrop its scale: two points of it, and how far apart they really are. */
export function createScaleTool(bench: Bench): ScaleTool {
  let line: readonly [Point, Point] | null = null;
  const typing = createTyping();
  const draft = createDraft(bench, () => ({
    closed: false,
    least: 2,
    most: 2,
    finish: ([a, b]) => {
      line = [a!, b!];
      return true;
    },
  }));

  const setLength = (metres: number): Problem | null => {
    const level = bench.home.levels[bench.view.level];
    if (!level?.backdrop || !line) return { kind: 'no-backdrop' };
    if (metres < LEAST || metres > MOST)
      return { kind: 'scale-out-of-reach', metres, least: LEAST, most: MOST };
    const [from, to] = line;
    const factor = metres / distance(from, to);
    const { backdrop } = level;
    // The first point stays where it is: what was traced round it still lies over it.
    const scaled = {
      ...backdrop,
      metresPerPixel: backdrop.metresPerPixel * factor,
      at: add(from, scale(sub(backdrop.at, from), factor)),
    };
    line = null;
    typing.clear();
    if (bench.run(change({ collection: 'levels', id: level.id }, { backdrop: scaled }))) bench.takeUp();
    return null;
  };

  return {
    ...draft,
    get line() {
      return line;
    },
    setLength,
    up(aim) {
      if (!bench.home.levels[bench.view.level]?.backdrop) return bench.say({ kind: 'no-backdrop' });
      line = null;
      // A picture has no walls to snap to yet: the points are meant exactly where they are set.
      draft.up({ ...aim, pull: 0 });
    },
    key(input) {
      if (!line) return draft.key!(input);
      if (input.key === 'Enter' && typing.text !== '') {
        const metres = bench.parseLength(typing.text);
        if (metres === null) bench.say({ kind: 'not-a-length', text: typing.text });
        else {
          const problem = setLength(metres);
          if (problem) bench.say(problem);
        }
      } else if (!typing.key(input)) return false;
      bench.redrawOverlay();
      return true;
    },
    cancel() {
      const busy = line !== null;
      line = null;
      typing.clear();
      return draft.cancel() || busy;
    },
    marks() {
      if (!line) return draft.marks();
      const [from, to] = line;
      const text = typing.text === '' ? bench.lengthText(distance(from, to)) : `${typing.text}|`;
      return [
        { mark: 'path', points: [from, to], closed: false },
        { mark: 'length', from, to, text },
      ];
    },
  };
}
