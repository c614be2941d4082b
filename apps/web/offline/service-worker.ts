import type { Precache } from './build-plugins';

/**
 * Keeps one whole version of the program on this device, so that it starts without a signal.
 *
 * Install: every file of the version is fetched and kept, all or none. Activate: only when no page of the older
 * version is left, or when the person asked for it. The version before is kept too, so that a page still open on it
 * finds its parts. Nothing is ever taken half from one version and half from another.
 */
type Scope = Omit<ServiceWorkerGlobalScope, 'registration'> & { readonly SEAMWARD_PRECACHE: Precache; readonly registration: ServiceWorkerRegistration };
declare const self: unknown;
const scope = self as Scope;

const { version, files } = scope.SEAMWARD_PRECACHE;
const PREFIX = 'seamward-';
const CACHE = PREFIX + version;
const VERSIONS_KEPT = 2;

const addressOf = (file: string): string => new URL(file, scope.registration.scope).href;

const keepAll = async (): Promise<void> => {
  const cache = await caches.open(CACHE);
  await cache.addAll(files.map((f) => new Request(addressOf(f), { cache: 'reload' })));
};

const dropOld = async (): Promise<void> => {
  const others = (await caches.keys()).filter((k) => k.startsWith(PREFIX) && k !== CACHE);
  const old = others.slice(0, Math.max(0, others.length - (VERSIONS_KEPT - 1)));
  await Promise.all(old.map((k) => caches.delete(k)));
};

const answer = async (request: Request): Promise<Response> => {
  const own = await caches.open(CACHE);
  if (request.mode === 'navigate') {
    const page = await own.match(addressOf('index.html'));
    if (page) return page;
  }
  const kept = (await own.match(request, { ignoreSearch: true })) ?? (await caches.match(request, { ignoreSearch: true }));
  return kept ?? fetch(request);
};

scope.addEventListener('install', (event) => event.waitUntil(keepAll()));
scope.addEventListener('activate', (event) => event.waitUntil(dropOld().then(() => scope.clients.claim())));
scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method === 'GET' && request.url.startsWith(scope.registration.scope)) event.respondWith(answer(request));
});
scope.addEventListener('message', (event) => {
  if (event.data === 'use-now') void scope.skipWaiting();
});
