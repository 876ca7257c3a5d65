const REACHABLE = 'button, a[href], summary, select, input, [tabindex="0"]';
/** What takes typing is not entered unasked: on a phone it would raise the keyboard. */
const TYPED = 'input[type="text"], textarea';

/** The panel that had the focus has gone with it. */
let orphaned = false;

/**
 * An attachment. Where what has the focus goes from the panel, since it has done its work, the focus goes to its neighbour
 * in the part that is left of where it was, or else to the panel's heading; it never falls to the page.
 */
export function keepFocus(panel: HTMLElement): () => void {
  let had: { element: HTMLElement; above: Element[]; order: HTMLElement[] } | null = null;

  const reachable = (within: Element) => [...within.querySelectorAll<HTMLElement>(REACHABLE)];

  function remember({ target }: FocusEvent): void {
    const element = target as HTMLElement;
    const above: Element[] = [];
    for (let one = element.parentElement; one && one !== panel; one = one.parentElement) above.push(one);
    had = { element, above, order: reachable(panel) };
  }

  /** Whoever leaves by themselves is not called back. What is taken away is still there when it loses the focus. */
  function leave(): void {
    queueMicrotask(() => {
      if (had?.element.isConnected && document.activeElement !== had.element) had = null;
    });
  }

  function look(): void {
    if (!had || had.element.isConnected || isElsewhere()) return;
    const { element, above, order } = had;
    had = null;
    const left = above.find((one) => one.isConnected);
    const at = order.indexOf(element);
    const near = [...order.slice(at + 1), ...order.slice(0, Math.max(0, at)).reverse()];
    const next = left && near.find((one) => left.contains(one) && !one.matches(`${TYPED}, :disabled`));
    give(next ?? heading());
  }

  const heading = () => panel.querySelector<HTMLElement>('h2');
  const isElsewhere = () => document.activeElement !== null && document.activeElement !== document.body;

  function give(to: HTMLElement | null): void {
    if (!to) return;
    if (!to.matches(REACHABLE)) to.tabIndex = -1;
    to.focus({ preventScroll: document.documentElement.dataset.by === 'pointer' });
  }

  panel.addEventListener('focusin', remember);
  panel.addEventListener('focusout', leave);
  const observer = new MutationObserver(look);
  observer.observe(panel, { childList: true, subtree: true });
  if (orphaned && !isElsewhere()) give(heading());
  orphaned = false;

  return () => {
    observer.disconnect();
    panel.removeEventListener('focusin', remember);
    panel.removeEventListener('focusout', leave);
    orphaned = had !== null && !isElsewhere();
  };
}
