import type { Home } from '../home';
import type { Problem } from '../problem';

/**
 * One change of a home. `apply` changes the draft it is handed (an immer draft in the editor, any mutable copy
 * elsewhere) and returns the reason where the change is refused; the caller then throws the draft away.
 */
export interface Edit {
  /** What undo calls it: “Add room”. */
  name: string;
  apply(draft: Home): Problem | void;
}
