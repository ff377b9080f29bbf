// Keeps the program itself on the tablet, so that it opens with the network gone. It keeps the pages and no data: what the pages know they keep themselves.
self.importScripts('./service-worker-assets.js');
const prefix = 'fairlead-';
const name = prefix + self.assetsManifest.version;
// A build that can be debugged loads its symbols too, so they belong to it.
const left = [/\.(gz|br|map)$/, /^service-worker/];
const assets = self.assetsManifest.assets.filter(a => !left.some(pattern => pattern.test(a.url)));
const shell = new URL('index.html', self.registration.scope).href;

// Every file is taken with the hash that was computed when the program was built; a file that differs keeps the whole version out.
self.addEventListener('install', event => event.waitUntil(caches.open(name)
    .then(cache => cache.addAll(assets.map(a => new Request(a.url, { integrity: a.hash, cache: 'no-cache' }))))
    .catch(async error => { await caches.delete(name); throw error; })));

self.addEventListener('activate', event => event.waitUntil((async () => {
    for (const old of await caches.keys()) {
        if (old.startsWith(prefix) && old !== name) await caches.delete(old);
    }
    await self.clients.claim();
})()));

// A newer version waits until the person at the tablet takes it.
self.addEventListener('message', event => { if (event.data === 'take over') self.skipWaiting(); });

self.addEventListener('fetch', event => {
    const { request } = event;
    const { origin, pathname } = new URL(request.url);
    if (request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/') || pathname === '/health') return;
    event.respondWith((async () => {
        const cache = await caches.open(name);
        return await cache.match(request.mode === 'navigate' ? shell : request.url, { ignoreVary: true }) ?? await fetch(request);
    })());
});
