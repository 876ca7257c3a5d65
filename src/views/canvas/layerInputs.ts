import { isRough, type Scene } from './scene';
import type { LayerName } from './stage';

/** What each layer shows; it is drawn again only where one of these is another object than before. */
export const LAYER_INPUTS: Record<LayerName, (scene: Scene) => readonly unknown[]> = {
  estimate: ({ camera, picture, plan, contours, target, backdrop, litBand }) => [
    camera,
    picture,
    plan.floor,
    contours,
    target,
    backdrop,
    litBand,
  ],
  plan: ({ camera, plan }) => [camera, plan],
  objects: (scene) => [
    scene.camera,
    scene.plan,
    scene.lettered,
    isRough(scene.picture),
    scene.home,
    scene.view,
    scene.form,
    scene.selection,
    scene.results.assessment?.rooms,
    scene.suspects,
    scene.proposal.proposal,
    scene.proposal.shown,
    scene.proposal.adjusted,
  ],
  overlay: (scene) => [
    scene.camera,
    scene.home,
    scene.view,
    scene.form,
    scene.backdrop,
    scene.results.state,
    scene.results.progress,
    scene.proposal,
    scene.next,
    scene.travel,
    scene.selection,
    scene.suspects,
    scene.suspect,
    scene.hover,
    scene.overlay,
    scene.probe,
  ],
};
