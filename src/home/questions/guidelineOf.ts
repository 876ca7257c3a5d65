import { atMains, GUIDELINES, type GuidelineSet } from '../../engine/judging/guidelines';
import type { Home, Id } from '../home';

/** The guideline of an id, the home's own before the published ones, at the home's mains; null where there is none. */
export function guidelineOf(home: Home, id: Id): GuidelineSet | null {
  const own = Object.hasOwn(home.guidelines, id) ? home.guidelines[id]! : null;
  if (own) return { ...own, standing: 'own' };
  const published = GUIDELINES.find((set) => set.id === id);
  return published ? atMains(published, home.settings.mains) : null;
}
