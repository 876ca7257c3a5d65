import { Layer } from 'konva/lib/Layer.js';
import { Shape } from 'konva/lib/Shape.js';
import { Stage } from 'konva/lib/Stage.js';

export type LayerName = 'estimate' | 'plan' | 'objects' | 'overlay';

/** Lowest first: the ink lies under the walls. */
const LAYER_NAMES: readonly LayerName[] = ['estimate', 'plan', 'objects', 'overlay'];

export interface PaintedStage {
  draw(name: LayerName): void;
  resize(width: number, height: number): void;
  /** Follows a move to a screen of another density, or a change of the page's zoom. */
  setDensity(ratio: number): void;
  destroy(): void;
}

/** A stage of four layers that hear nothing: pointer events belong to the container, hits to the editor. */
export function createStage(
  container: HTMLDivElement,
  paint: (name: LayerName, context: CanvasRenderingContext2D) => void,
): PaintedStage {
  const stage = new Stage({ container, width: 1, height: 1, listening: false });
  const layers = new Map<LayerName, Layer>();
  for (const name of LAYER_NAMES) {
    const layer = new Layer({ listening: false });
    layer.add(
      new Shape({
        listening: false,
        perfectDrawEnabled: false,
        sceneFunc: (context) => paint(name, context._context as CanvasRenderingContext2D),
      }),
    );
    stage.add(layer);
    layers.set(name, layer);
  }
  return {
    draw: (name) => layers.get(name)!.draw(),
    resize: (width, height) => stage.size({ width, height }),
    setDensity: (ratio) => layers.forEach((layer) => layer.getCanvas().setPixelRatio(ratio)),
    destroy: () => stage.destroy(),
  };
}
