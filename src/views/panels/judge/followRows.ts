import type { EditorState } from '../../editorState.svelte';

/** How far from the panel's edge a leader begins to fade, px. */
const FADE = 28;

/** Tells the ruler where each room's row stands, as it scrolls, opens and moves. */
export function followRows(state: EditorState) {
  return (list: HTMLElement) => {
    const panel = list.closest<HTMLElement>('.panel');
    let frame = 0;

    const measure = () => {
      frame = 0;
      const frameBox = (panel ?? list).getBoundingClientRect();
      state.rowPlaces = [...list.querySelectorAll<HTMLElement>('li[data-thing]')].map((row) => {
        const box = row.getBoundingClientRect();
        const line = row.firstElementChild!.getBoundingClientRect();
        const y = (line.top + line.bottom) / 2;
        const inside = Math.min(y - frameBox.top, frameBox.bottom - y);
        return {
          id: row.dataset.thing!,
          y,
          top: Math.max(box.top, frameBox.top),
          bottom: Math.min(box.bottom, frameBox.bottom),
          open: row.classList.contains('open'),
          fade: Math.min(1, Math.max(0, inside / FADE)),
        };
      });
    };
    const later = () => {
      frame ||= requestAnimationFrame(measure);
    };
    const sizes = new ResizeObserver(later);
    sizes.observe(list);
    // Whatever opens above the list moves it without changing its size.
    for (const part of panel?.children ?? []) sizes.observe(part);
    const rows = new MutationObserver(later);
    rows.observe(list, { childList: true, subtree: true, attributes: true, attributeFilter: ['class'] });
    panel?.addEventListener('scroll', later, { passive: true });
    window.addEventListener('resize', later);
    later();
    return () => {
      cancelAnimationFrame(frame);
      sizes.disconnect();
      rows.disconnect();
      panel?.removeEventListener('scroll', later);
      window.removeEventListener('resize', later);
      state.rowPlaces = [];
    };
  };
}
