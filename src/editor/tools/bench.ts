import type { NextReading } from '../../engine/nextReadings/request';
import type { Edit } from '../../home/edits/edit';
import type { Point } from '../../home/home';
import type { Problem } from '../../home/problem';
import type { Adjusting } from '../adjusting';
import type { CameraControl } from '../cameraControl';
import type { History } from '../history';
import { hitTest } from '../input/hitTest';
import type { Services } from '../services';
import type { Session } from '../session';
import { AT_REST, PLANS } from '../stages';
import { suspectAt } from '../suspects';
import type { Store } from '../store';
import type { Topics } from '../topics';
import type { TriedSources } from '../trying';
import type { UnmarkedSource } from '../../engine/mapping/sourceSampling/unmarkedSources';
import type { Bench } from './tool';
import type { Toolbox } from './toolbox';

interface Parts {
  services: Services;
  store: Store;
  history: History;
  session: Session;
  camera: CameraControl;
  topics: Topics;
  toolbox: () => Toolbox;
  answer: Adjusting;
  tried: TriedSources;
  run(edit: Edit): Problem | null;
  mark(name: string): void;
  commit(): void;
  bail(): void;
  say(problem: Problem): void;
  planned(): readonly NextReading[];
  pickNext(rank: number | null): void;
  mayWrite(): boolean;
  suspects(): readonly UnmarkedSource[];
}

/** CSS pixels from the middle of a sign to its edge. */
const SIGN = 12;

/** The part of a session that tools work with. */
export function createBench(parts: Parts): Bench {
  const { services, store, history, session, camera, topics, toolbox } = parts;
  const lengthUnit = () => store.home.settings.lengthUnit;
  return {
    get home() {
      return store.home;
    },
    get view() {
      return session.view;
    },
    get camera() {
      return camera.camera;
    },
    get selection() {
      return session.selection;
    },
    get load() {
      return toolbox().load;
    },
    get readingPlace() {
      return session.readingPlace;
    },
    answer: parts.answer,
    tried: parts.tried,
    run: (edit) => parts.run(edit) === null,
    // A gesture's own refusals are seen in what does not follow the hand; a sentence a frame would be noise.
    redraw: (edit) => parts.mayWrite() && history.open && history.redraw(edit) === null,
    mark: parts.mark,
    commit: parts.commit,
    bail: parts.bail,
    hit: (aim, kinds) => hitTest(store.home, session.view, aim.at, aim.reach, kinds),
    suspectAt: (aim) => suspectAt(parts.suspects(), aim.at, aim.reach),
    chooseSuspect: session.chooseSuspect,
    planned({ at: [x, y], reach }) {
      const { stage, level } = session.view;
      const near = Math.max(reach, SIGN / camera.camera.scale);
      let nearest: { rank: number; at: Point; distance: number } | null = null;
      if (PLANS.includes(stage))
        parts.planned().forEach((one, rank) => {
          const distance = Math.hypot(one.at[0] - x, one.at[1] - y);
          if (one.level === level && distance <= Math.min(near, nearest?.distance ?? Infinity))
            nearest = { rank, at: one.at, distance };
        });
      return nearest;
    },
    pickNext: parts.pickNext,
    select: session.select,
    hoverOver: session.hoverOver,
    setReadingPlace: session.setReadingPlace,
    say: parts.say,
    takeUp: (tool = AT_REST[session.view.stage]) => toolbox().takeUp(tool),
    panBy: camera.panBy,
    redrawOverlay: () => topics.tell('overlay'),
    lengthText: (metres) => services.lengthText(metres, lengthUnit()),
    parseLength(text) {
      const parsed = services.parseLength(text, lengthUnit());
      return parsed.ok ? parsed.metres : null;
    },
  };
}
