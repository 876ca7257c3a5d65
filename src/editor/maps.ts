import { createEstimateTask, type EstimateTask } from './compute/estimateTask';
import { createTrying } from './trying';
import type { Home } from '../home/home';
import type { Problem } from '../home/problem';
import type { Results, View } from './editor';
import type { Services } from './services';
import type { Topics } from './topics';

interface Parts {
  services: Services;
  home(): Home;
  view(): View;
  say(problem: Problem): void;
  tell: Topics['tell'];
  /** What follows from a map may be otherwise. */
  changed(): void;
}

interface Maps {
  estimate: EstimateTask;
  trying: ReturnType<typeof createTrying>;
  /** The map that is shown: as it was measured, or as it would be. */
  shown(): Results;
}

/** The map from the readings, and the map as it would be with sources off, weaker or elsewhere. */
export function createMaps({ services, home, view, say, tell, changed }: Parts): Maps {
  const estimate = createEstimateTask(
    services,
    () => {
      tell('results', 'pointer');
      trying.follow();
      changed();
    },
    (fitted) => trying.fitted ?? fitted,
  );
  const trying = createTrying({
    services,
    home,
    view,
    measured: () => estimate.results,
    changed() {
      tell('tried', 'results', 'overlay', 'pointer');
      changed();
    },
    say,
  });
  return { estimate, trying, shown: () => trying.over(estimate.results) };
}
