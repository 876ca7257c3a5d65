import type { KeyInput } from '../editor';

export type Command = 'undo' | 'redo' | 'escape' | 'selectAll' | 'showAll' | 'closer' | 'wider' | 'hand';

/** Keys by what they do; `words/tools` says it in sentences for the list of keys. `mod` is Ctrl, or Cmd on a Mac. */
export interface Shortcut {
  does:
    Command | 'delete' | 'duplicate' | 'nudge' | 'nudgeFar' | 'turn' | 'length' | 'free' | 'addToSelection';
  keys: readonly string[];
}

/** The list a person can look up. */
export const SHORTCUTS: readonly Shortcut[] = [
  { does: 'undo', keys: ['mod Z'] },
  { does: 'redo', keys: ['mod shift Z', 'mod Y'] },
  { does: 'escape', keys: ['Escape'] },
  { does: 'selectAll', keys: ['mod A'] },
  { does: 'addToSelection', keys: ['shift click'] },
  { does: 'delete', keys: ['Delete', 'Backspace'] },
  { does: 'duplicate', keys: ['mod D'] },
  { does: 'nudge', keys: ['arrows'] },
  { does: 'nudgeFar', keys: ['shift arrows'] },
  { does: 'turn', keys: ['R'] },
  { does: 'free', keys: ['alt'] },
  { does: 'length', keys: ['digits', 'Enter'] },
  { does: 'hand', keys: ['Space'] },
  { does: 'closer', keys: ['+'] },
  { does: 'wider', keys: ['−'] },
  { does: 'showAll', keys: ['0'] },
];

/** The command a key stands for when no tool has used it. */
export function commandOf({ key, shift, command }: KeyInput): Command | null {
  const letter = key.toLowerCase();
  if (command) {
    if (letter === 'z') return shift ? 'redo' : 'undo';
    if (letter === 'y') return 'redo';
    if (letter === 'a') return 'selectAll';
    return null;
  }
  switch (key) {
    case 'Escape':
      return 'escape';
    case '+':
    case '=':
      return 'closer';
    case '-':
    case '−':
      return 'wider';
    case '0':
      return 'showAll';
    case ' ':
      return 'hand';
    default:
      return null;
  }
}
