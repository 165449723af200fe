/**
 * Answers for the page when there is no network: it keeps every file of one build, and a newer
 * build waits beside it until the person asks for it. Built by `build/precache.ts`, which writes
 * the list of files in.
 */
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from "workbox-precaching";
import type { PrecacheEntry } from "workbox-precaching";
import { registerRoute } from "workbox-routing";
import { isPageAddress } from "./pageAddress.js";
import { USE_NOW } from "./talk.js";

declare const self: ServiceWorkerGlobalScope;
/** The files of this build; `revision` is null where the name carries the hash. */
declare const BUILT_FILES: PrecacheEntry[];

precacheAndRoute(BUILT_FILES);
cleanupOutdatedCaches();
registerRoute(
  ({ request, url }) =>
    request.mode === "navigate" && isPageAddress(url.href, self.registration.scope),
  createHandlerBoundToURL("index.html"),
);

self.addEventListener("message", ({ data }) => {
  if (data === USE_NOW) void self.skipWaiting();
});

// The page of the first visit is served from here at once, not only after it is loaded again.
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
