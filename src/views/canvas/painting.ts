import type { Editor, Topic } from '../../editor/editor';
import type { Form } from '../layout.svelte';
import { paintEstimate } from './estimateLayer';
import { LAYER_INPUTS } from './layerInputs';
import { createBackdropPainter } from './paintBackdrop';
import { readInk, type Ink } from './ink';
import { paintObjects } from './objectsLayer';
import { paintGood } from './paintGood';
import { paintLitBand } from './paintLitBand';
import { paintOverlay } from './overlayLayer';
import { paintPlan } from './planLayer';
import { createRepaint } from './repaint';
import { plannersAnswer } from '../../editor/shownAnswer';
import { createSceneReader, type Scene } from './scene';
import { createStage, type LayerName } from './stage';
import type { Sheet } from './sheet';
import { createTravel } from './travel';

const TOPICS: readonly Topic[] = [
  'home',
  'view',
  'selection',
  'tool',
  'camera',
  'overlay',
  'pointer',
  'results',
  'proposal',
  'atHand',
  'next',
  'tried',
];

/** Keeps a container painted with what the editor holds, at most once a frame. */
export function mountPainting(
  container: HTMLDivElement,
  editor: Editor,
  form: () => Form,
  isStill: () => boolean,
) {
  const root = document.documentElement;
  const read = createSceneReader(editor);
  const travel = createTravel(isStill);
  let ink: Ink = readInk(root);
  let scene = read(form());
  let frame = 0;
  let anew = false;

  const paintBackdrop = createBackdropPainter(() => askAnew());
  const painters: Record<LayerName, (sheet: Sheet, scene: Scene) => void> = {
    estimate: (sheet, { picture, plan, contours, target, backdrop, litBand, good }) => {
      if (backdrop) paintBackdrop(sheet, backdrop);
      if (picture) paintEstimate(sheet, picture, plan.floor, contours, target);
      if (good) paintGood(sheet, good);
      paintLitBand(sheet, { litBand, picture, plan });
    },
    plan: (sheet, scene) => paintPlan(sheet, scene.plan),
    objects: paintObjects,
    overlay: paintOverlay,
  };
  const stage = createStage(container, (name, context) => {
    painters[name]({ context, camera: scene.camera, ink }, scene);
  });
  const repaint = createRepaint<Scene>(
    (['estimate', 'plan', 'objects', 'overlay'] as const).map((name) => ({
      name,
      inputs: LAYER_INPUTS[name],
      draw: () => stage.draw(name),
    })),
  );
  const paint = () => {
    frame = 0;
    const share = travel(plannersAnswer(editor.arranging.state), performance.now());
    scene = read(form(), share);
    repaint(scene, anew);
    anew = false;
    if (share < 1) ask();
  };
  const ask = () => {
    frame ||= requestAnimationFrame(paint);
  };
  const askAnew = () => {
    anew = true;
    ask();
  };

  const resized = new ResizeObserver(() => {
    const { clientWidth: width, clientHeight: height } = container;
    if (width === 0 || height === 0) return;
    stage.resize(width, height);
    editor.resize(width, height);
    // A resized canvas is blank: it is painted within this frame, before it is seen.
    anew = true;
    cancelAnimationFrame(frame);
    paint();
  });
  resized.observe(container);

  const themed = new MutationObserver(() => {
    ink = readInk(root);
    askAnew();
  });
  themed.observe(root, { attributes: true, attributeFilter: ['data-theme'] });

  const leaveDensity = followDensity((ratio) => {
    stage.setDensity(ratio);
    askAnew();
  });
  document.fonts.addEventListener('loadingdone', askAnew);
  const leave = TOPICS.map((topic) => editor.subscribe(topic, ask));

  return {
    destroy() {
      cancelAnimationFrame(frame);
      for (const stop of leave) stop();
      document.fonts.removeEventListener('loadingdone', askAnew);
      leaveDensity();
      themed.disconnect();
      resized.disconnect();
      stage.destroy();
    },
  };
}

/** Calls back with the device's pixels per CSS pixel whenever they change. */
function followDensity(changed: (ratio: number) => void): () => void {
  let query: MediaQueryList;
  const listen = () => {
    query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    query.addEventListener('change', next, { once: true });
  };
  const next = () => {
    changed(devicePixelRatio);
    listen();
  };
  listen();
  return () => query.removeEventListener('change', next);
}
