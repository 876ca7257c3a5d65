import type * as here from './here';

export type Here = typeof here;

/** Fetches what of the engine answers on the page; until it is there, and where it cannot be had, what is drawn answers. */
export function loadHere(): { engine: () => Here | null; loaded: Promise<void> } {
  let engine: Here | null = null;
  const loaded = import('./here').then(
    (module) => void (engine = module),
    () => {},
  );
  return { engine: () => engine, loaded };
}
