import { createSubscriber } from 'svelte/reactivity';
import type { Editor, Topic } from '../editor/editor';
import type { Id } from '../home/home';

/** Where a room's row stands on the screen, for the ruler's leaders; client pixels. */
export interface RowPlace {
  id: Id;
  /** Middle of the row's first line. */
  y: number;
  top: number;
  bottom: number;
  open: boolean;
  /** 1 inside the panel, falling to 0 at its edge. */
  fade: number;
}

/**
 * The bridge from the editor to Svelte: reading a member inside a template or a derivation follows the editor's topic
 * for it. No state proxy is put round the editor's own objects; changes go through `editor`.
 */
export class EditorState {
  readonly editor: Editor;
  /** Filled by the panel that lists rooms; empty where there is no such list. */
  rowPlaces: readonly RowPlace[] = $state.raw([]);
  readonly #follow: (topic: Topic) => void;

  constructor(editor: Editor) {
    this.editor = editor;
    const subscribers = new Map<Topic, () => void>();
    this.#follow = (topic) => {
      let subscriber = subscribers.get(topic);
      if (!subscriber) {
        subscriber = createSubscriber((update) =>
          // Lists and fields rest while the hand moves something, and follow when it lets go: only the sheet is redrawn.
          editor.subscribe(topic, () => (topic === 'home' && editor.carrying ? undefined : update())),
        );
        subscribers.set(topic, subscriber);
      }
      subscriber();
    };
  }

  get home() {
    this.#follow('home');
    return this.editor.home;
  }
  get revision() {
    this.#follow('home');
    return this.editor.revision;
  }
  get canUndo() {
    this.#follow('home');
    this.#follow('proposal');
    return this.editor.canUndo;
  }
  get canRedo() {
    this.#follow('home');
    this.#follow('proposal');
    return this.editor.canRedo;
  }
  get view() {
    this.#follow('view');
    return this.editor.view;
  }
  get selection() {
    this.#follow('selection');
    return this.editor.selection;
  }
  get suspect() {
    this.#follow('selection');
    return this.editor.suspect;
  }
  get hover() {
    this.#follow('selection');
    return this.editor.hover;
  }
  get litBand() {
    this.#follow('selection');
    return this.editor.litBand;
  }
  get tool() {
    this.#follow('tool');
    return this.editor.tool;
  }
  get load() {
    this.#follow('tool');
    return this.editor.load;
  }
  get overlay() {
    this.#follow('overlay');
    return this.editor.overlay;
  }
  get readingPlace() {
    this.#follow('overlay');
    return this.editor.readingPlace;
  }
  get scaleLine() {
    this.#follow('overlay');
    return this.editor.scaleLine;
  }
  get camera() {
    this.#follow('camera');
    return this.editor.camera;
  }
  get cursor() {
    this.#follow('pointer');
    return this.editor.cursor;
  }
  get probe() {
    this.#follow('pointer');
    return this.editor.probe;
  }
  get results() {
    this.#follow('results');
    return this.editor.results;
  }
  /** What was worked out from the readings, whatever is being tried. */
  get measured() {
    this.#follow('results');
    return this.editor.measured;
  }
  get tried() {
    this.#follow('tried');
    return this.editor.trying.changes;
  }
  get compared() {
    this.#follow('tried');
    return this.editor.trying.compared;
  }
  get proposal() {
    this.#follow('proposal');
    return this.editor.arranging.state;
  }
  get prices() {
    this.#follow('proposal');
    return this.editor.arranging.prices;
  }
  get atHand() {
    for (const topic of ['home', 'selection', 'view', 'results', 'proposal', 'atHand'] as const)
      this.#follow(topic);
    return this.editor.atHand;
  }
  get broken() {
    for (const topic of ['home', 'view', 'results', 'proposal'] as const) this.#follow(topic);
    return this.editor.broken;
  }
  get next() {
    this.#follow('next');
    return this.editor.next;
  }
  get shelf() {
    this.#follow('shelf');
    return this.editor.shelf;
  }
  get notice() {
    this.#follow('notice');
    return this.editor.notice;
  }
}
