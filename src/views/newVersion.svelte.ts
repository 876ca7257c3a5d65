let waiting = $state.raw<ServiceWorker | null>(null);

/** The page's offline copy, and whether a newer one waits to be used. */
export const newVersion = {
  get waiting(): ServiceWorker | null {
    return waiting;
  },
  watch(): void {
    if (!('serviceWorker' in navigator)) return;
    void navigator.serviceWorker.register('./service-worker.js').then(
      (registration) => {
        // The very first copy replaces nothing: there is no older page to reload.
        const look = () => (waiting = navigator.serviceWorker.controller ? registration.waiting : null);
        look();
        registration.addEventListener('updatefound', () => {
          registration.installing?.addEventListener('statechange', look);
        });
      },
      // Refused where the page is not served over https: it then works as long as there is a network.
      () => {},
    );
  },
  take(): void {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload());
    waiting?.postMessage('take over');
  },
};
