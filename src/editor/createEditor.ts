import type { Edit } from '../home/edits/edit';
import { newHome } from '../home/newHome';
import type { Problem } from '../home/problem';
import { createArranging } from './arranging';
import { createHand } from './atHand';
import { toPlan } from './camera';
import { createCameraControl } from './cameraControl';
import { createEstimates } from './compute/estimates';
import { loadHere } from './compute/loadHere';
import { createNextTask } from './compute/nextTask';
import type { Editor, Mark, PointerInput } from './editor';
import { createHistory } from './history';
import { createKeyboard } from './input/keyboard';
import { createPointer } from './input/pointer';
import type { Services } from './services';
import { createSession } from './session';
import { createShelf } from './storage/shelf';
import { suspectsShown } from './suspects';
import { ANSWERS, AT_REST } from './stages';
import { createStore } from './store';
import { pointsToShow, thingsShown } from './things';
import { createBench } from './tools/bench';
import { createToolbox } from './tools/toolbox';
import type { Toolbox } from './tools/toolbox';
import { createFirstRoom } from './firstRoom';
import { createTopics } from './topics';
import { createMaps } from './maps';

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
    if (history.open) estimate.follow(store.home, session.view);
    tell('home', 'overlay', 'pointer');
  });
  const history = createHistory(store, () => {
    tell('home');
    shelf.touch();
    settle();
    firstRoom.follow(store.home, session.view);
    arranging.follow(session.view);
  });
  const session = createSession(store.home, topics);
  const camera = createCameraControl(
    () => pointsToShow(store.home, session.view),
    () => tell('camera', 'overlay', 'pointer'),
  );

  const desk = { services, home: () => store.home, view: () => session.view };
  const { estimate, trying, shown } = createMaps({
    ...desk,
    say: (problem) => say(problem),
    tell,
    changed() {
      arranging.check();
      followNext();
    },
  });
  const here = loadHere();
  const estimates = createEstimates(shown, here.engine);
  const arranging = createArranging({
    ...desk,
    lastStep: () => history.last,
    results: shown,
    engine: here.engine,
    run: (edit) => run(edit),
    say: (problem) => say(problem),
    changed: () => tell('proposal', 'overlay'),
  });
  const hand = createHand({
    ...desk,
    selection: () => session.selection,
    proposal: () => arranging.state,
    results: shown,
    engine: here.engine,
    carrying: () => carrying(),
    topics,
  });
  const next = createNextTask(services, () => tell('next'));
  const followNext = () => next.follow(store.home, estimate.results);
  const settle = () => {
    estimate.settle(store.home, session.view);
    trying.follow();
    arranging.check();
    followNext();
  };

  const say = (problem: Problem) => session.say({ text: problem, tone: 'problem' });
  const shelf = createShelf(services, {
    get home() {
      return store.home;
    },
    lay(home) {
      layDown();
      history.clear();
      estimate.restart();
      trying.restart();
      next.ask(null, home, estimate.results);
      session.restart(home);
      store.put(home);
      camera.showAll();
      settle();
      arranging.restart(session.view);
      toolbox.takeUp(AT_REST[session.view.stage]);
      firstRoom.restart();
      firstRoom.follow(home, session.view);
    },
    say,
    changed: () => tell('shelf'),
  });

  const run = (edit: Edit): Problem | null => {
    const problem: Problem | null = shelf.writes ? history.run(edit) : { kind: 'storage-read-only' };
    if (problem) say(problem);
    // What was refused before has been done otherwise, or let be.
    else if (session.notice?.tone === 'problem') session.say(null);
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

  const bench = createBench({
    services,
    store,
    history,
    session,
    camera,
    topics,
    toolbox: () => toolbox,
    answer: arranging.adjusting,
    run,
    mark,
    commit,
    bail,
    say,
    planned: () => next.state.answer?.readings ?? [],
    pickNext: next.pick,
    mayWrite: () => shelf.writes,
    tried: trying.hand,
    suspects: () => suspectsShown(store.home.sources, estimate.results.assessment, session.view),
  });
  const toolbox: Toolbox = createToolbox(bench, () => tell('tool', 'overlay', 'pointer'));
  const firstRoom = createFirstRoom(toolbox);

  const pointer = createPointer({
    get tool() {
      return toolbox.name;
    },
    get taps() {
      return toolbox.tool.taps ?? false;
    },
    down(input) {
      session.say(null);
      toolbox.tool.down(toolbox.aim(input, true));
    },
    move: (input, pressed) => toolbox.tool.move(toolbox.aim(input, pressed)),
    up: (input) => toolbox.tool.up(toolbox.aim(input, false)),
    doubleClick: (input) => toolbox.tool.doubleClick?.(toolbox.aim(input, false)),
    doubleTap(input) {
      // A room's floor is as good as bare paper for it.
      const small = ANSWERS[session.view.stage].filter((kind) => kind !== 'room');
      if (atRest() && !bench.hit(toolbox.aim(input, false), small)) camera.showAll();
    },
    bail: () => losePress(),
    panBy: camera.panBy,
    zoomBy: (factor, x, y) => camera.zoomBy(factor, [x, y]),
    rests(input) {
      over = input;
      if (!input) session.hoverOver(null);
      tell('pointer');
    },
  });

  const carrying = () => pointer.pressed && (history.open || arranging.adjusting.open);

  const losePress = () => {
    const { tool } = toolbox;
    if (tool.lose) tool.lose();
    else tool.cancel();
    bail();
  };
  /** Whatever the hand is doing counts no more. */
  const giveUp = () => {
    pointer.abandon();
    losePress();
  };
  const layDown = () => {
    giveUp();
    toolbox.tool.cancel();
  };
  const undo = () => {
    if (pointer.pressed || history.open) return giveUp();
    if (toolbox.tool.stepBack?.()) return;
    toolbox.tool.cancel();
    if (arranging.adjusting.undo()) return;
    if (shelf.writes) history.undo();
  };
  const redo = () => {
    if (arranging.adjusting.redo()) return;
    if (shelf.writes) history.redo();
  };
  const atRest = () => toolbox.name === AT_REST[session.view.stage];
  const escape = () => {
    if (pointer.pressed || history.open) return giveUp();
    if (toolbox.tool.cancel()) return;
    if (session.notice) return session.say(null);
    if (!atRest()) return toolbox.takeUp(AT_REST[session.view.stage]);
    session.select([]);
  };
  const key = createKeyboard(toolbox.key, {
    undo,
    redo,
    escape,
    selectAll: () =>
      session.select(
        [...thingsShown(store.home, session.view, ANSWERS[session.view.stage])].map(({ ref }) => ref),
      ),
    showAll: camera.showAll,
    closer: () => camera.zoomBy(ZOOM_STEP),
    wider: () => camera.zoomBy(1 / ZOOM_STEP),
    hand() {
      pointer.holdPan(true);
      tell('pointer');
    },
  });

  let lastStage = session.view.stage;
  topics.subscribe('view', () => {
    layDown();
    if (session.view.stage !== lastStage) toolbox.takeUp(AT_REST[session.view.stage]);
    lastStage = session.view.stage;
    settle();
    firstRoom.follow(store.home, session.view);
    arranging.follow(session.view);
  });
  firstRoom.follow(store.home, session.view);
  const ready = Promise.all([shelf.start(), here.loaded]).then(() => {});
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
      return arranging.adjusting.canUndo || history.canUndo;
    },
    get canRedo() {
      return arranging.adjusting.canRedo || history.canRedo;
    },
    mark,
    commit,
    bail,
    get carrying() {
      return carrying();
    },
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
    useTool(tool, load) {
      layDown();
      firstRoom.decline();
      toolbox.takeUp(tool, load);
    },
    get overlay(): readonly Mark[] {
      const marks = toolbox.marks();
      const { pointed } = session;
      return pointed ? [...marks, { mark: 'pointed', points: pointed }] : marks;
    },
    pointOut: session.pointOut,
    get suspect() {
      return session.suspect;
    },
    chooseSuspect: session.chooseSuspect,
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
      // What is carried hides what is under it.
      if (!over || carrying()) return null;
      return estimates.probe(store.home, session.view, toPlan(camera.camera, over.x, over.y));
    },
    estimateAt: (at, height) => estimates.at(store.home, session.view, at, height),
    get results() {
      return shown();
    },
    get measured() {
      return estimate.results;
    },
    trying,
    cancelAssessment: estimate.cancel,
    stopSampling: estimate.stopSampling,
    startSampling: estimate.startSampling,
    arranging,
    get atHand() {
      return hand.atHand;
    },
    get broken() {
      return hand.broken;
    },
    get next() {
      return next.state;
    },
    askNext: (what) => next.ask(what, store.home, estimate.results),
    pickNext: next.pick,
    shelf,
    get notice() {
      return session.notice;
    },
    say: session.say,
    subscribe: topics.subscribe,
    destroy() {
      topics.silence();
      estimate.end();
      trying.stop();
      arranging.end();
      hand.end();
      next.end();
      shelf.end();
    },
  };
}
