import { mount } from 'svelte';
import './app.css';
import { browserServices } from './browser';
import { createEditor } from './editor/createEditor';
import App from './views/App.svelte';
import { newVersion } from './views/newVersion.svelte';
import { sampleHome } from './views/panels/homeFiles';

const editor = createEditor(browserServices(() => sampleHome('terraced-house')));

// A page that is hidden may never come back: what is not saved yet is saved now.
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') void editor.shelf.flush();
});
window.addEventListener('pagehide', () => void editor.shelf.flush());

// Asked for at the first change the person makes, when there is something to keep.
void editor.ready.then(() => {
  const stop = editor.subscribe('home', () => {
    stop();
    void navigator.storage?.persist?.();
  });
});

if (import.meta.env.PROD) newVersion.watch();

mount(App, { target: document.getElementById('app')!, props: { editor } });
