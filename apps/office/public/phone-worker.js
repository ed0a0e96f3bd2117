// The phone page without a signal: the page, its parts and what it last read are kept on the phone, so
// that a reload on the roof brings the page back with what was typed. Nothing is sent from here; the
// outbox of the page does that.

const PAGE = 'phone-page';
const READ = 'phone-read';
const MOST_PARTS = 80;
const READS = /^\/api\/(session|people|parties|jobs|jobs\/[0-9a-f-]{36})$/;

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('message', (event) => {
  if (event.data?.keep)
    event.waitUntil(keepAll(event.data.keep).then(() => event.ports[0]?.postMessage('kept')));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin) return;
  if (request.mode === 'navigate') event.respondWith(newest(request, PAGE, '/phone'));
  else if (pathname.startsWith('/assets/')) event.respondWith(kept(request));
  else if (READS.test(pathname)) event.respondWith(newest(request, READ, request.url));
});

/** From the service where it answers; else what it answered last. */
async function newest(request, name, key) {
  const cache = await caches.open(name);
  try {
    const answer = await fetch(request);
    if (answer.ok) await cache.put(key, answer.clone());
    return answer;
  } catch (error) {
    const before = await cache.match(key);
    if (before) return before;
    throw error;
  }
}

/** Parts carry a digest in their name: what is kept never gets old. */
async function kept(request) {
  const cache = await caches.open(PAGE);
  const before = await cache.match(request);
  if (before) return before;
  const answer = await fetch(request);
  if (answer.ok) await cache.put(request, answer.clone());
  return answer;
}

/** What was loaded before this worker was there. */
async function keepAll(urls) {
  const [page, read] = await Promise.all([caches.open(PAGE), caches.open(READ)]);
  const missing = [];
  for (const url of urls) {
    const { pathname } = new URL(url, self.location.href);
    const cache = READS.test(pathname) ? read : page;
    if (READS.test(pathname) || pathname.startsWith('/assets/') || pathname === '/phone') {
      if (!(await cache.match(url))) missing.push([cache, url]);
    }
  }
  await Promise.allSettled(missing.map(([cache, url]) => cache.add(url)));
  const keys = await page.keys();
  await Promise.all(
    keys.slice(0, Math.max(0, keys.length - MOST_PARTS)).map((key) => page.delete(key)),
  );
}
