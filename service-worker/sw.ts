/**
 * Keeps the built app on the phone: every file of the build is stored at install and served from there.
 * A new version waits until the page says that its user accepted it. It never opens the records database:
 * nothing that happens here can touch what was typed.
 */
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  type PrecacheEntry,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { type PageMessage, SKIP_WAITING } from '../app/offline/messages.ts';

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: PrecacheEntry[] };

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();
// Routes live after the hash, so every navigation inside the scope is the one page.
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')));

self.addEventListener('message', (event) => {
  const message = event.data as PageMessage | undefined;
  if (message?.type === SKIP_WAITING) void self.skipWaiting();
});

// The first visit is controlled without a reload, so that it is offline-ready as soon as it says so.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
