/** One layer of the stage: what it depends on, and how it is drawn again. */
export interface RepaintedLayer<Scene> {
  name: string;
  /** Compared one by one, by identity: the home and the results are immutable. */
  inputs: (scene: Scene) => readonly unknown[];
  draw: () => void;
}

/** Draws a layer again only where something it shows has changed. Returns the names of those drawn. */
export function createRepaint<Scene>(
  layers: readonly RepaintedLayer<Scene>[],
): (scene: Scene, anew?: boolean) => string[] {
  const seen = new Map<string, readonly unknown[]>();
  return (scene, anew = false) => {
    const drawn: string[] = [];
    for (const { name, inputs, draw } of layers) {
      const now = inputs(scene);
      const before = seen.get(name);
      if (!anew && before && now.every((input, i) => input === before[i])) continue;
      seen.set(name, now);
      draw();
      drawn.push(name);
    }
    return drawn;
  };
}
