import { MediaQuery } from 'svelte/reactivity';

export type ThemeChoice = 'auto' | 'light' | 'dark';

const key = 'stillroom.theme';
const dark = new MediaQuery('prefers-color-scheme: dark');

function stored(): ThemeChoice {
  try {
    const value = localStorage.getItem(key);
    return value === 'light' || value === 'dark' ? value : 'auto';
  } catch {
    // A browser set to keep nothing refuses the call itself.
    return 'auto';
  }
}

let choice = $state<ThemeChoice>(stored());

/** The page's light or dark; `data-theme` on the root always holds the outcome. */
export const theme = {
  get choice(): ThemeChoice {
    return choice;
  },
  get dark(): boolean {
    return choice === 'auto' ? dark.current : choice === 'dark';
  },
  choose(next: ThemeChoice): void {
    choice = next;
    try {
      if (next === 'auto') localStorage.removeItem(key);
      else localStorage.setItem(key, next);
    } catch {
      // The choice then holds for this visit only.
    }
  },
};
