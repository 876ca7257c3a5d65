import type { Point } from '../home/home';
import { START_CAMERA, fitted, panned, resized, zoomedAbout } from './camera';
import type { Camera } from './editor';

export interface CameraControl {
  readonly camera: Camera;
  resize(width: number, height: number): void;
  /** About a place in CSS pixels; without one, about the middle. */
  zoomBy(factor: number, at?: Point): void;
  panBy(dx: number, dy: number): void;
  showAll(): void;
}

/** Holds the camera. `points` are those that a whole view must show. */
export function createCameraControl(points: () => Point[], changed: () => void): CameraControl {
  let camera = START_CAMERA;
  /** Nobody has moved the paper since the whole home was shown. */
  let isWhole = true;
  const set = (next: Camera) => {
    camera = next;
    changed();
  };
  const control: CameraControl = {
    get camera() {
      return camera;
    },
    resize(width, height) {
      if (width === camera.width && height === camera.height) return;
      const next = resized(camera, width, height);
      set(isWhole ? fitted(next, points()) : next);
    },
    zoomBy(factor, at = [camera.width / 2, camera.height / 2]) {
      isWhole = false;
      set(zoomedAbout(camera, factor, at[0], at[1]));
    },
    panBy(dx, dy) {
      isWhole = false;
      set(panned(camera, dx, dy));
    },
    showAll() {
      isWhole = true;
      set(fitted(camera, points()));
    },
  };
  return control;
}
