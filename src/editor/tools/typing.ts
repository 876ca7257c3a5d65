import type { KeyInput } from '../editor';

export interface Typing {
  readonly text: string;
  clear(): void;
  /** True where the key was a stroke of a length. */
  key(input: KeyInput): boolean;
}

/** A length typed while the hand is drawing: `4,2`, `420 cm`, `13' 9"`. Letters count once a digit stands. */
export function createTyping(): Typing {
  let text = '';
  return {
    get text() {
      return text;
    },
    clear() {
      text = '';
    },
    key({ key, command }) {
      if (command) return false;
      if (key === 'Backspace' && text !== '') {
        text = text.slice(0, -1);
        return true;
      }
      const starts = /^[0-9.,]$/.test(key);
      const goesOn = text !== '' && /^[0-9.,'"′″ a-z]$/i.test(key);
      if (!starts && !goesOn) return false;
      text += key;
      return true;
    },
  };
}
