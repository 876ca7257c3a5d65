import type { Home } from './home';
import type { IntegrityProblem } from './problem';

export function integrity(_home: Home): IntegrityProblem[] {
  return [];
}
