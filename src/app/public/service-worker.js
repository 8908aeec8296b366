// Keeps the app itself on the device, so that it opens without a network. The log never passes through here.
const CACHE = 'tubwright-app';

self.addEventListener('install', (event) => event.waitUntil(fetchAll().then(() => self.skipWaiting())));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin || isHubCall(url.pathname)) return;
  event.respondWith(event.request.mode === 'navigate' ? page(event.request) : asset(event.request));
});

function isHubCall(path) {
  return ['/push', '/pull', '/enrol', '/health', '/site'].some((call) => path === call || path.startsWith(`${call}/`));
}

async function fetchAll() {
  const { files } = await (await fetch('/offline.json', { cache: 'no-store' })).json();
  const cache = await caches.open(CACHE);
  const wanted = ['/', '/app.webmanifest', '/icon.svg', ...files.map((file) => `/${file}`)];
  const known = new Set((await cache.keys()).map((request) => new URL(request.url).pathname));
  await cache.addAll(wanted.filter((path) => !known.has(path) || path === '/'));
  for (const path of known) if (!wanted.includes(path)) await cache.delete(path);
}

// The page comes from the network where there is one, so that a new version is seen; else from the device.
async function page(request) {
  const cache = await caches.open(CACHE);
  try {
    const fresh = await fetch(request, { signal: AbortSignal.timeout(3000) });
    if (fresh.ok) await cache.put('/', fresh.clone());
    return fresh;
  } catch {
    return (await cache.match('/', { ignoreVary: true })) ?? Response.error();
  }
}

async function asset(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, { ignoreVary: true, ignoreSearch: true })) ?? fetch(request);
}
