import type { Editor } from '../../editor/editor';
import { parseHome } from '../../home/file/parse';
import type { Home } from '../../home/home';
import type { SampleKey } from '../../words/panels';
import { chooseFile } from './chooseFile';

const SAMPLE_TEXTS: Record<SampleKey, () => Promise<{ default: string }>> = {
  'terraced-house': () => import('../../../samples/terraced-house.home.json?raw'),
  'one-bedroom-flat': () => import('../../../samples/one-bedroom-flat.home.json?raw'),
  'single-bedroom': () => import('../../../samples/single-bedroom.home.json?raw'),
};

/** A sample home, parsed; the samples travel with the page and are fetched when asked for. */
export async function sampleHome(key: SampleKey): Promise<Home | null> {
  const text = await SAMPLE_TEXTS[key]();
  const parsed = parseHome(text.default);
  return parsed.ok ? parsed.home : null;
}

/** Opens a sample home; one that is kept on this device already is gone back to, not begun again. */
export async function openSample(editor: Editor, key: SampleKey): Promise<void> {
  const home = await sampleHome(key);
  if (!home) return;
  const { shelf } = editor;
  const kept = shelf.homes.find(({ title }) => title === home.title);
  if (kept?.id === shelf.current) return editor.showAll();
  await (kept ? shelf.open(kept.id) : shelf.begin(home));
  editor.showAll();
}

/** Opens a home file that the person chooses. What is wrong with it is said by the notice; the open home stays. */
export async function openHomeFile(editor: Editor): Promise<void> {
  const file = await chooseFile('.json,application/json');
  if (file) await openFile(editor, file);
}

/** Opens a home file that is in hand. */
export async function openFile(editor: Editor, file: File): Promise<void> {
  const problem = await editor.shelf.read(await file.text(), file.name);
  if (problem) editor.say({ text: problem, tone: 'problem' });
  else editor.showAll();
}

/** Hands the home to the browser as a file to keep. */
export function saveHomeFile(editor: Editor): void {
  const { text, fileName } = editor.shelf.write();
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser has taken the bytes by the next task.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}
