import type { KeyInput } from '../editor';
import { commandOf } from './shortcuts';
import type { Command } from './shortcuts';

/** Keys go to the tool in hand first, then to the commands of the page. */
export function createKeyboard(tool: (input: KeyInput) => boolean, commands: Record<Command, () => void>) {
  return (input: KeyInput): boolean => {
    if (tool(input)) return true;
    const command = commandOf(input);
    if (command) commands[command]();
    return command !== null;
  };
}
