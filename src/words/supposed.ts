import type { SourceChange } from '../engine/whatIf/sourceChange';
import type { Home, Id } from '../home/home';
import { lengthText } from './numbers';
import { lowerFirst, thingName } from './things';

/** What a marked source may be tried as. */
export const SOURCE_STATES = { asItIs: 'as it is', off: 'off', half: 'half' };

export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;

export const sourceName = (home: Home, id: Id): string => thingName(home, { kind: 'source', id });

/** 'off', 'half', 'moved by 1.20 m', 'half, moved by 1.20 m'; 'as it is' where it is. */
export function changeText(home: Home, { id, scale, path }: SourceChange): string {
  const strength =
    scale === 0 ? SOURCE_STATES.off : scale === 0.5 ? SOURCE_STATES.half : scale === 1 ? '' : `× ${scale}`;
  const from = home.sources[id]?.path[0];
  const away = path && from ? Math.hypot(path[0]![0] - from[0], path[0]![1] - from[1]) : 0;
  const moved = path ? `moved by ${lengthText(away, home.settings.lengthUnit)}` : '';
  return [strength, moved].filter(Boolean).join(', ') || SOURCE_STATES.asItIs;
}

/** 'The map as it would be without the street cable. Nothing here was measured.' */
export function supposedSentence(home: Home, changes: readonly SourceChange[]): string {
  const off = changes.filter(({ scale }) => scale === 0);
  const others = changes.filter(({ scale }) => scale !== 0);
  const named = (id: Id) => `the ${lowerFirst(sourceName(home, id))}`;
  const without = off.length > 0 ? `without ${listed(off.map(({ id }) => named(id)))}` : '';
  const otherwise = others.map((change) => `with ${named(change.id)} ${changeText(home, change)}`);
  return `The map as it would be ${listed([without, ...otherwise].filter(Boolean))}. Nothing here was measured.`;
}
