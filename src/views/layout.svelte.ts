import { MediaQuery } from 'svelte/reactivity';

/** How the regions lie: ruler with words and leaders; ruler with discs; panel below the plan; panel as a sheet. */
export type Form = 'wide' | 'desk' | 'tablet' | 'phone';

const wide = new MediaQuery('min-width: 1200px');
const desk = new MediaQuery('min-width: 900px');
const tablet = new MediaQuery('min-width: 600px');
const coarse = new MediaQuery('pointer: coarse');
const still = new MediaQuery('prefers-reduced-motion: reduce');

export const layout = {
  get form(): Form {
    return wide.current ? 'wide' : desk.current ? 'desk' : tablet.current ? 'tablet' : 'phone';
  },
  get touch(): boolean {
    return coarse.current;
  },
  get still(): boolean {
    return still.current;
  },
};
