/** What the page tells the service worker that waits: take over from the older one. */
export const USE_NOW = "use-now";
