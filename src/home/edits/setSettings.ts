import { settingsProblems } from '../integrity';
import { putPart } from './check';
import type { Settings } from '../home';
import type { Edit } from './edit';

/** Changes some of the settings. */
export function setSettings(patch: Partial<Settings>): Edit {
  return {
    name: 'Change settings',
    apply: (draft) => putPart(draft, 'settings', patch) ?? settingsProblems(draft)[0],
  };
}
