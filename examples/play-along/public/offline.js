// Keeps what the page has loaded, so that it opens again without a network.
const STORE = 'play-along';

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const isOwn = new URL(request.url).origin === self.location.origin;
  if (request.method === 'GET' && isOwn) event.respondWith(newest(request));
});

async function newest(request) {
  const store = await caches.open(STORE);
  try {
    const answer = await fetch(request);
    if (answer.ok) await store.put(request, answer.clone());
    return answer;
  } catch (failure) {
    const kept = await store.match(request);
    if (kept === undefined) throw failure;
    return kept;
  }
}
