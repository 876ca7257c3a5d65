import type { Edit } from '../home/edits/edit';
import type { KindName } from '../home/home';
import { newHome } from '../home/newHome';
import type { Problem } from '../home/problem';
import { toPlan } from './camera';
import { createCameraControl } from './cameraControl';
import { createArrangeTask } from './compute/arrangeTask';
import { createEstimates } from './compute/estimates';
import { createEstimateTask } from './compute/estimateTask';
import type { Editor, PointerInput } from './editor';
import { createHistory } from './history';
import { hitTest } from './input/hitTest';
import { createKeyboard } from './input/keyboard';
import { createPointer } from './input/pointer';
import type { Services } from './services';
import { createSession } from './session';
import { createLibrary } from './storage/library';
import { createStore } from './store';
import { takeAnswer } from './takeAnswer';
import { thingsShown } from './things';
import type { Bench } from './tools/tool';
import { createToolbox } from './tools/toolbox';
import { createTopics } from './topics';

const EVERYTHING: readonly KindName[] = ['room', 'opening', 'fixture', 'piece', 'source', 'reading', 'walk'];

/** How much one press of + or − zooms. */
const ZOOM_STEP = 1.25;

/**
 * A session with everything it needs from its surroundings handed in. It stands at once, with an empty home; `ready`
 * settles when the kept one is laid out.
 */
export function createEditor(services: Services): Editor {
  const topics = createTopics();
  const { tell } = topics;
  /** Where the pointer rests over the plan. */
  let over: PointerInput | null = null;

  const store = createStore(newHome(), () => {
    session.follow(store.home);
    if (history.open) {
      estimate.follow(store.home, session.view);
      estimates.live(store.home, session.selection);
    }
    tell('home', 'overlay', 'pointer');
  });
  const history = createHistory(store, () => {
    tell('home');
    library.touch();
    settle();
  });
  const session = createSession(store.home, topics);
  const camera = createCameraControl(
    () =>
      [...thingsShown(store.home, session.view, EVERYTHING)].flatMap(({ thing, kind }) => [
        ...kind.shape(store.home, thing).points,
      ]),
    () => tell('camera', 'overlay', 'pointer'),
  );

  const estimate = createEstimateTask(services, () => {
    tell('results', 'pointer');
    checkProposal();
  });
  const estimates = createEstimates(estimate);
  const arranging = createArrangeTask(services, () => tell('proposal'));
  const fitted = () => estimate.results.assessment?.fitted ?? null;
  const checkProposal = () => arranging.check(store.home, fitted());
  const settle = () => {
    estimate.settle(store.home, session.view);
    checkProposal();
  };

  const say = (problem: Problem) => session.say({ text: problem, tone: 'problem' });
  const library = createLibrary(services, {
    get home() {
      return store.home;
    },
    lay(home) {
      toolbox.tool.cancel();
      history.clear();
      estimate.restart();
      arranging.leave();
      session.restart(home);
      store.put(home);
      camera.showAll();
      settle();
    },
    say,
    changed: () => tell('library'),
  });

  const run = (edit: Edit): Problem | null => {
    const problem: Problem | null = library.writes ? history.run(edit) : { kind: 'storage-read-only' };
    if (problem) say(problem);
    return problem;
  };

  // A gesture that ends with nothing changed has still left pictures of its way on the map.
  const ended = (end: () => void) => () => {
    if (!history.open) return;
    end();
    settle();
    tell('home');
  };
  const commit = ended(history.commit);
  const bail = ended(history.bail);
  const mark = (name: string) => {
    commit();
    history.mark(name);
  };

  const bench: Bench = {
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
      return toolbox.load;
    },
    get readingPlace() {
      return session.readingPlace;
    },
    run: (edit) => run(edit) === null,
    // A gesture's own refusals are seen in what does not follow the hand; a sentence a frame would be noise.
    redraw: (edit) => library.writes && history.redraw(edit) === null,
    mark,
    commit,
    bail,
    hit: (aim, kinds) => hitTest(store.home, session.view, aim.at, aim.reach, kinds),
    select: session.select,
    hoverOver: session.hoverOver,
    setReadingPlace: session.setReadingPlace,
    say,
    takeUp: (tool = 'select') => toolbox.takeUp(tool),
    panBy: camera.panBy,
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
    panBy: camera.panBy,
    zoomBy: (factor, x, y) => camera.zoomBy(factor, [x, y]),
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
  const key = createKeyboard(toolbox.key, {
    undo,
    redo,
    escape,
    selectAll: () =>
      session.select([...thingsShown(store.home, session.view, EVERYTHING)].map(({ ref }) => ref)),
    showAll: camera.showAll,
    closer: () => camera.zoomBy(ZOOM_STEP),
    wider: () => camera.zoomBy(1 / ZOOM_STEP),
    hand() {
      pointer.holdPan(true);
      tell('pointer');
    },
  });

  topics.subscribe('view', () => {
    toolbox.tool.cancel();
    bail();
    settle();
  });
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
    mark,
    commit,
    bail,
    get view() {
      return session.view;
    },
    setStage: session.setStage,
    setLevel: session.setLevel,
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
    useTool: toolbox.takeUp,
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
      return camera.camera;
    },
    resize: camera.resize,
    zoomBy: camera.zoomBy,
    panBy: camera.panBy,
    showAll: camera.showAll,
    pointer: pointer.pointer,
    key,
    keyUp(input) {
      if (input.key !== ' ') return;
      pointer.holdPan(false);
      tell('pointer');
    },
    get cursor() {
      if (pointer.panning) return 'grabbing';
      return session.hover && toolbox.name === 'select' ? 'pointer' : toolbox.tool.cursor;
    },
    get probe() {
      return over && estimates.probe(store.home, session.view, toPlan(camera.camera, over.x, over.y));
    },
    estimateAt: (at, height) => estimates.at(store.home, session.view, at, height),
    get results() {
      return estimate.results;
    },
    cancelAssessment: estimate.cancel,
    get proposal() {
      return arranging.state;
    },
    arrange(options) {
      const known = fitted();
      if (!known) return arranging.refuse({ kind: 'no-map-to-arrange-on' });
      arranging.start(store.home, known, options?.cautious ?? arranging.state.cautious);
    },
    cancelArrangement: arranging.cancel,
    showAnswer: arranging.show,
    takeProposal() {
      const problem = takeAnswer(arranging.state, run);
      if (!problem) arranging.leave();
      return problem;
    },
    leaveProposal: arranging.leave,
    library,
    get notice() {
      return session.notice;
    },
    say: session.say,
    subscribe: topics.subscribe,
    destroy() {
      topics.silence();
      estimate.end();
      arranging.end();
      library.end();
    },
  };
}
