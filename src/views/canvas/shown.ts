import type { Stage } from '../../editor/editor';

/** What the sheet shows at each stage: calm comes from leaving out. */
export interface Shown {
  readings: 'values' | 'dots' | 'none';
  /** Values under the rooms' names. */
  roomValues: boolean;
  sections: boolean;
  walks: boolean;
  ghosts: boolean;
  /** The note with the estimate at the pointer. */
  probe: boolean;
}

const PLAIN: Shown = {
  readings: 'none',
  roomValues: false,
  sections: false,
  walks: false,
  ghosts: false,
  probe: false,
};

export const SHOWN: Record<Stage, Shown> = {
  sketch: { ...PLAIN, walks: true },
  survey: { ...PLAIN, readings: 'values', walks: true },
  map: { ...PLAIN, readings: 'dots', walks: true, probe: true },
  judge: { ...PLAIN, roomValues: true, sections: true },
  arrange: { ...PLAIN, ghosts: true },
  report: PLAIN,
};
