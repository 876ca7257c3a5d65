import { putPart } from './check';
import type { Edit } from './edit';

export function setTitle(title: string): Edit {
  return { name: 'Change title', apply: (draft) => putPart(draft, null, { title }) ?? undefined };
}

/** Degrees from the top of the page to north, counter-clockwise. */
export function setNorth(north: number): Edit {
  return { name: 'Turn north', apply: (draft) => putPart(draft, null, { north }) ?? undefined };
}
