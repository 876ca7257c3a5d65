import type { KeyInput } from '../editor';

/** What the page itself does on a key, whichever tool is in hand. */
export type Command = 'undo' | 'redo' | 'escape' | 'selectAll' | 'showAll' | 'closer' | 'wider' | 'hand';

const WITH_COMMAND: Record<string, Command> = { z: 'undo', y: 'redo', a: 'selectAll' };

const PLAIN: Record<string, Command> = {
  Escape: 'escape',
  '+': 'closer',
  '=': 'closer',
  '-': 'wider',
  '−': 'wider',
  '0': 'showAll',
  ' ': 'hand',
};

/** The command a key stands for when no tool has used it. */
export function commandOf({ key, shift, command }: KeyInput): Command | null {
  if (!command) return PLAIN[key] ?? null;
  const letter = key.toLowerCase();
  return letter === 'z' && shift ? 'redo' : (WITH_COMMAND[letter] ?? null);
}
