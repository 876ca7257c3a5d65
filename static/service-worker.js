// Keeps the whole page on the device, so that it opens without a network. The build fills in the version and the files.
const VERSION = 'stillroom-__VERSION__';
const FILES = __FILES__;

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(VERSION).then((cache) => cache.addAll(FILES)));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names
            .filter((name) => name.startsWith('stillroom-') && name !== VERSION)
            .map((name) => caches.delete(name)),
        ),
      ),
  );
});

// The page asks for the newer version when it is ready to reload; until then the files of one version stay together.
self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(self.registration.scope)) return;
  const wanted = request.mode === 'navigate' ? './index.html' : request;
  event.respondWith(
    caches
      .open(VERSION)
      .then((cache) => cache.match(wanted, { ignoreSearch: true, ignoreVary: true }))
      .then((kept) => kept ?? fetch(request)),
  );
});
