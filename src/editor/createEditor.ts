import { fieldsOf } from '../engine/dose/fieldAt';
import type { FieldAt } from '../engine/dose/fieldAt';
import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import type { Edit } from '../home/edits/edit';
import type { KindName, Point } from '../home/home';
import { newHome } from '../home/newHome';
import type { Problem } from '../home/problem';
import { START_CAMERA, fitted, panned, resized, toPlan, zoomedAbout } from './camera';
import { createArrangeTask } from './compute/arrangeTask';
import { createEstimateTask } from './compute/estimateTask';
import { liveDoses } from './compute/liveDoses';
import { probeField, probePicture } from './compute/probe';
import type { Camera, Editor, PointerInput, Probe } from './editor';
import { createHistory } from './history';
import { hitTest } from './input/hitTest';
import { createPointer } from './input/pointer';
import { commandOf } from './input/shortcuts';
import type { Services } from './services';
import { createSession } from './session';
import { createLibrary } from './storage/library';
import { createStore } from './store';
import { thingsShown } from './things';
import { takeAnswer } from './takeAnswer';
import type { Bench } from './tools/tool';
import { createToolbox } from './tools/toolbox';
import { createTopics } from './topics';

const EVERYTHING: readonly KindName[] = ['room', 'opening', 'fixture', 'piece', 'source', 'reading', 'walk'];

/** How much one press of + or − zooms. */
const ZOOM_STEP = 1.25;

/** A session with everything it needs from its surroundings handed in. Starts at once with an empty home; `ready` brings the kept one. */
export function createEditor(services: Services): Editor {
  const topics = createTopics();
  const { tell } = topics;
  let camera: Camera = START_CAMERA;
  let over: PointerInput | null = null;
  let fields: { fitted: FittedSurvey; fieldAt: FieldAt } | null = null;

  const store = createStore(newHome(), () => {
    session.follow(store.home);
    if (history.open) {
      estimate.follow(store.home, session.view);
      showLive();
    }
    tell('home', 'overlay', 'pointer');
  });
  const history = createHistory(store, () => {
    tell('home');
    library.touch();
    settle();
  });
  const session = createSession(store.home, topics);
  const estimate = createEstimateTask(services, () => {
    tell('results', 'pointer');
    arranging.check(store.home, session.view, estimate.results.assessment?.fitted ?? null);
  });
  const arranging = createArrangeTask(services, () => tell('proposal'));
  const library = createLibrary(services, {
    get home() {
      return store.home;
    },
    lay(home) {
      toolbox.tool.cancel();
      history.clear();
      session.restart(home);
      estimate.restart();
      arranging.leave();
      store.put(home);
      showAll();
      settle();
    },
    say: (problem) => session.say({ text: problem, tone: 'problem' }),
    changed: () => tell('library'),
  });

  const settle = () => {
    estimate.settle(store.home, session.view);
    arranging.check(store.home, session.view, estimate.results.assessment?.fitted ?? null);
  };

  const fieldAt = (): FieldAt | null => {
    const known = estimate.results.assessment?.fitted;
    if (!known) return null;
    if (fields?.fitted !== known) fields = { fitted: known, fieldAt: fieldsOf(known) };
    return fields.fieldAt;
  };

  const showLive = () => {
    const known = fieldAt();
    if (known) estimate.showLive(liveDoses(known, store.home, session.selection));
  };

  const refused = (problem: Problem | null): Problem | null => {
    if (problem) session.say({ text: problem, tone: 'problem' });
    return problem;
  };

  const run = (edit: Edit): Problem | null =>
    library.writes ? history.run(edit) : refused({ kind: 'storage-read-only' });

  const setCamera = (next: Camera) => {
    camera = next;
    tell('camera', 'overlay', 'pointer');
  };

  const showAll = () => {
    const points: Point[] = [];
    for (const { thing, kind } of thingsShown(store.home, session.view, EVERYTHING)) {
      points.push(...kind.shape(store.home, thing).points);
    }
    setCamera(fitted(camera, points));
  };

  const bail = () => {
    if (!history.open) return;
    history.bail();
    settle();
    tell('home');
  };

  const bench: Bench = {
    get home() {
      return store.home;
    },
    get view() {
      return session.view;
    },
    get camera() {
      return camera;
    },
    get selection() {
      return session.selection;
    },
    get load() {
      return toolbox.load;
    },
    get readingPlace() {
      return session.readingPlace;
    },
    run: (edit) => refused(run(edit)) === null,
    // A gesture's own refusals are seen in what does not follow the hand; a sentence a frame would be noise.
    redraw: (edit) => library.writes && history.redraw(edit) === null,
    mark: (name) => history.mark(name),
    commit: () => history.commit(),
    bail,
    hit: (aim, kinds) => hitTest(store.home, session.view, aim.at, aim.reach, kinds),
    select: session.select,
    hoverOver: session.hoverOver,
    setReadingPlace: session.setReadingPlace,
    say: (problem) => session.say({ text: problem, tone: 'problem' }),
    takeUp: (tool = 'select') => toolbox.takeUp(tool),
    panBy: (dx, dy) => setCamera(panned(camera, dx, dy)),
    redrawOverlay: () => tell('overlay'),
    lengthText: (metres) => services.lengthText(metres, store.home.settings.lengthUnit),
    parseLength(text) {
      const parsed = services.parseLength(text, store.home.settings.lengthUnit);
      return parsed.ok ? parsed.metres : null;
    },
  };
  const toolbox = createToolbox(bench, () => tell('tool', 'overlay', 'pointer'));

  const pointer = createPointer({
    get tool() {
      return toolbox.name;
    },
    down(input) {
      session.say(null);
      toolbox.tool.down(toolbox.aim(input, true));
    },
    move: (input, pressed) => toolbox.tool.move(toolbox.aim(input, pressed)),
    up: (input) => toolbox.tool.up(toolbox.aim(input, false)),
    doubleClick: (input) => toolbox.tool.doubleClick?.(toolbox.aim(input, false)),
    bail() {
      toolbox.tool.cancel();
      bail();
    },
    panBy: bench.panBy,
    zoomBy: (factor, x, y) => setCamera(zoomedAbout(camera, factor, x, y)),
    rests(input) {
      over = input;
      if (!input) session.hoverOver(null);
      tell('pointer');
    },
  });

  const undo = () => {
    if (toolbox.tool.stepBack?.()) return;
    if (history.open) return bail();
    toolbox.tool.cancel();
    if (library.writes) history.undo();
  };
  const redo = () => {
    if (library.writes) history.redo();
  };

  const escape = () => {
    if (toolbox.tool.cancel() || history.open) return bail();
    if (session.notice) return session.say(null);
    if (toolbox.name !== 'select') return toolbox.takeUp('select');
    session.select([]);
  };

  const probeAt = (at: Point): Probe => {
    const { assessment, request } = estimate.results;
    const picture = assessment?.pictures.find(({ level }) => level === session.view.level);
    const readings = [...thingsShown(store.home, session.view, ['reading'])].map(
      ({ ref }) => store.home.readings[ref.id]!,
    );
    return probePicture(
      picture,
      request,
      readings.filter(({ excluded }) => excluded === '').map((reading) => reading.at),
      at,
    );
  };

  const unsubscribeView = topics.subscribe('view', settle);
  const ready = library.start();
  settle();

  return {
    ready,
    get home() {
      return store.home;
    },
    get revision() {
      return store.revision;
    },
    run,
    undo,
    redo,
    get canUndo() {
      return history.canUndo;
    },
    get canRedo() {
      return history.canRedo;
    },
    mark: (name) => history.mark(name),
    commit: () => history.commit(),
    bail,
    get view() {
      return session.view;
    },
    setStage: session.setStage,
    setLevel(level) {
      session.setLevel(level);
      if (history.open) bail();
    },
    setRound: session.setRound,
    get selection() {
      return session.selection;
    },
    select: session.select,
    get hover() {
      return session.hover;
    },
    hoverOver: session.hoverOver,
    get litBand() {
      return session.litBand;
    },
    lightBand: session.lightBand,
    get tool() {
      return toolbox.name;
    },
    get load() {
      return toolbox.load;
    },
    useTool: (tool, load) => toolbox.takeUp(tool, load),
    get overlay() {
      return toolbox.marks();
    },
    get readingPlace() {
      return session.readingPlace;
    },
    setReadingPlace: session.setReadingPlace,
    get scaleLine() {
      return toolbox.scale.line;
    },
    scaleTo: (metres) => toolbox.scale.setLength(metres),
    get camera() {
      return camera;
    },
    resize(width, height) {
      const first = camera.width === 0 || camera.height === 0;
      setCamera(resized(camera, width, height));
      if (first) showAll();
    },
    zoomBy(factor, at) {
      const [x, y] = at ?? [camera.width / 2, camera.height / 2];
      setCamera(zoomedAbout(camera, factor, x, y));
    },
    panBy: bench.panBy,
    showAll,
    pointer: pointer.pointer,
    key(input) {
      if (toolbox.key(input)) return true;
      const command = commandOf(input);
      switch (command) {
        case 'undo':
          undo();
          break;
        case 'redo':
          redo();
          break;
        case 'escape':
          escape();
          break;
        case 'selectAll':
          session.select([...thingsShown(store.home, session.view, EVERYTHING)].map(({ ref }) => ref));
          break;
        case 'showAll':
          showAll();
          break;
        case 'closer':
        case 'wider':
          setCamera(
            zoomedAbout(
              camera,
              command === 'closer' ? ZOOM_STEP : 1 / ZOOM_STEP,
              camera.width / 2,
              camera.height / 2,
            ),
          );
          break;
        case 'hand':
          pointer.holdPan(true);
          tell('pointer');
          break;
        case null:
          return false;
      }
      return true;
    },
    keyUp({ key }) {
      if (key !== ' ') return;
      pointer.holdPan(false);
      tell('pointer');
    },
    get cursor() {
      if (pointer.panning) return 'grabbing';
      return session.hover && toolbox.name === 'select' ? 'pointer' : toolbox.tool.cursor;
    },
    get probe() {
      return over ? probeAt(toPlan(camera, over.x, over.y)) : null;
    },
    estimateAt(at, height) {
      const field = fieldAt();
      const drawn = estimate.results.request?.levels.find(({ id }) => id === session.view.level)?.height;
      const wished = height ?? drawn ?? store.home.settings.mapHeight;
      return field ? probeField(field, session.view.level, wished, at) : probeAt(at);
    },
    get results() {
      return estimate.results;
    },
    cancelAssessment: () => estimate.cancel(),
    get proposal() {
      return arranging.state;
    },
    arrange(options) {
      const known = estimate.results.assessment?.fitted;
      if (!known) return arranging.refuse({ kind: 'no-map-to-arrange-on' });
      arranging.start(store.home, session.view, known, options?.cautious ?? arranging.state.cautious);
    },
    cancelArrangement: () => arranging.cancel(),
    showAnswer: (index) => arranging.show(index),
    takeProposal() {
      const problem = takeAnswer(arranging.state, run);
      if (!problem) arranging.leave();
      return problem;
    },
    leaveProposal: () => arranging.leave(),
    library,
    get notice() {
      return session.notice;
    },
    say: session.say,
    subscribe: topics.subscribe,
    destroy() {
      unsubscribeView();
      topics.silence();
      estimate.end();
      arranging.end();
      library.end();
    },
  };
}
