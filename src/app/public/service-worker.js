// Keeps the app itself on the device, so that it opens at once and without a network. The log never passes through here.
const CACHE = 'tubwright-app';
const LIST = '/offline.json';
const ALWAYS = ['/app.webmanifest', '/icon.svg'];
const HUB_CALLS = ['/push', '/pull', '/enrol', '/health', '/site'];

self.addEventListener('install', (event) => event.waitUntil(refresh().then(() => self.skipWaiting())));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin || isHubCall(url.pathname)) return;
  event.respondWith(event.request.mode === 'navigate' ? page(event.request) : asset(event.request));
});
self.addEventListener('message', (event) => {
  if (event.data !== 'look-for-newer') return;
  event.waitUntil(
    refresh().then(
      (isNewer) => isNewer && event.source.postMessage('newer-version'),
      () => undefined,
    ),
  );
});

function isHubCall(path) {
  return path === LIST || HUB_CALLS.some((call) => path === call || path.startsWith(`${call}/`));
}

// Every page of the app is the same file. The kept one is shown at once; the page then asks for a newer one.
async function page(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match('/', { ignoreVary: true })) ?? fetch(request);
}

async function asset(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, { ignoreVary: true, ignoreSearch: true })) ?? fetch(request);
}

// Takes in a new version whole: all of its files first and its page last, so that the kept page never lacks a file. The
// files of the version before stay for pages that are still open. Gives true if there was a version before this one.
async function refresh() {
  const cache = await caches.open(CACHE);
  const fresh = await fetch(LIST, { cache: 'no-store' });
  if (!fresh.ok) return false;
  const before = await (await cache.match(LIST))?.text();
  const now = await fresh.clone().text();
  if (before === now) return false;
  const known = await knownPaths(cache);
  const wanted = [...ALWAYS, ...filesOf(now)];
  await cache.addAll(wanted.filter((path) => ALWAYS.includes(path) || !known.includes(path)));
  await cache.add(new Request('/', { cache: 'no-store' }));
  await cache.put(LIST, fresh);
  const kept = ['/', LIST, ...wanted, ...(before === undefined ? [] : filesOf(before))];
  await Promise.all(known.filter((path) => !kept.includes(path)).map((path) => cache.delete(path)));
  return before !== undefined;
}

function filesOf(list) {
  return JSON.parse(list).files.map((file) => `/${file}`);
}

async function knownPaths(cache) {
  return (await cache.keys()).map((request) => new URL(request.url).pathname);
}
