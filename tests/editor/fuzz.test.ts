import { describe, expect, it } from 'vitest';
import { random } from '../../src/engine/algebra/random';
import type { ToolLoad, ToolName } from '../../src/editor/editor';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import type { Point } from '../../src/home/home';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

const HANDS: [ToolName, ToolLoad][] = [
  ['select', {}],
  ['select', {}],
  ['select', {}],
  ['room', { room: { by: 'drag' } }],
  ['room', { room: { by: 'corners' } }],
  ['opening', { opening: { kind: 'door' } }],
  ['fixture', { fixture: { kind: 'radiator' } }],
  ['piece', { piece: { kind: 'desk', name: 'Desk', size: [1.2, 0.6] } }],
  ['source', { source: { kind: 'line', name: '' } }],
  ['reading', {}],
  ['walk', {}],
  ['pan', {}],
];
const KEYS = ['Escape', 'Enter', 'Delete', 'ArrowLeft', 'r', 'Backspace', '3', ',', ' '];

describe('any hand at all', () => {
  it.each([11, 12, 13, 14, 15, 16])(
    'seed %i: the home is a whole file at every rest, and undo leads back to where it began',
    async (seed) => {
      const chance = random(seed);
      const { editor, drag, click, doubleClick, lift, key, clock, engine } = await drive({ home: bedroom() });
      const start = editor.home;
      const at = (): Point => [
        Math.round(chance.next() * 700) / 100 - 1,
        Math.round(chance.next() * 600) / 100 - 1,
      ];
      const pick = <T>(from: readonly T[]) => from[Math.floor(chance.next() * from.length)]!;
      for (let step = 0; step < 150; step += 1) {
        const type = chance.next() < 0.4 ? 'touch' : 'mouse';
        const how = { type, alt: chance.next() < 0.2, shift: chance.next() < 0.2 } as const;
        const before = editor.home;
        const dice = chance.next();
        if (dice < 0.05) editor.setStage(pick(['sketch', 'sketch', 'survey', 'judge', 'arrange']));
        else if (dice < 0.2) editor.useTool(...pick(HANDS));
        else if (dice < 0.4) click(at(), how);
        else if (dice < 0.65) drag([at(), at(), at()], how);
        else if (dice < 0.75) {
          // A gesture that is lost halfway leaves the home as it was.
          const last = at();
          drag([at(), at(), last], { ...how, hold: true });
          pick([
            () => key('Escape'),
            () => drag([at()], { hold: true, id: 2, type: 'touch' }),
            () => editor.pointer.cancel({ ...RAW, type }),
          ])();
          lift(at(), { id: 2, type: 'touch' });
          lift(last, how);
          expect(editor.home, `step ${step}`).toBe(before);
        } else if (dice < 0.85) key(pick(KEYS), { shift: how.shift });
        else if (dice < 0.9) key('d', { command: true });
        else if (dice < 0.93) doubleClick(at());
        else if (dice < 0.97) editor.undo();
        else editor.redo();
        editor.keyUp({ key: ' ', shift: false, alt: false, command: false });
        if (chance.next() < 0.1) {
          clock.pass(300);
          engine.work();
        }
        expect(Array.isArray(editor.overlay)).toBe(true);
        if (step % 10 === 9) {
          const parsed = parseHome(serialiseHome(editor.home));
          expect(parsed.ok ? [] : parsed.problems, `step ${step}`).toEqual([]);
        }
      }
      editor.useTool('select');
      for (let i = 0; editor.canUndo && i < 1000; i += 1) editor.undo();
      expect(editor.home).toEqual(start);
    },
  );
});

const RAW = { id: 1, x: 0, y: 0, button: 0, shift: false, alt: false, command: false, time: 0 };
