import { MediaQuery } from 'svelte/reactivity';

/**
 * How the regions lie: ruler with words and leaders; ruler with discs; panel below the plan; panel as a sheet. A window too low
 * for a panel under the plan is a phone on its side.
 */
export type Form = 'wide' | 'desk' | 'tablet' | 'phone';

const wide = new MediaQuery('min-width: 1200px');
const desk = new MediaQuery('min-width: 900px');
const tablet = new MediaQuery('min-width: 600px');
const low = new MediaQuery('max-height: 499px');
const coarse = new MediaQuery('pointer: coarse');
const still = new MediaQuery('prefers-reduced-motion: reduce');

export const layout = {
  get form(): Form {
    if (low.current) return 'phone';
    return wide.current ? 'wide' : desk.current ? 'desk' : tablet.current ? 'tablet' : 'phone';
  },
  /** A phone on its side, its sheet at the right. */
  get lying(): boolean {
    return low.current && tablet.current;
  },
  get touch(): boolean {
    return coarse.current;
  },
  get still(): boolean {
    return still.current;
  },
};
