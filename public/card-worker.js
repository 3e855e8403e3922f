// Keeps the night card that was looked at last, so that it opens without a network. One card, no other page.

const CACHE = "ebbline-card";
const CARD = /^\/machines\/[^/]+\/card$/;
const PATIENCE_MS = 6000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", (event) => {
  const { page, assets } = event.data ?? {};
  if (typeof page !== "string" || !CARD.test(new URL(page).pathname)) return;
  event.waitUntil(keep(page, assets).then((kept) => event.source?.postMessage({ kept })));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin) return;
  if (request.mode === "navigate" && CARD.test(pathname)) event.respondWith(card(request));
  else if (pathname.startsWith("/_next/static/")) event.respondWith(asset(request));
});

/** Fetches the page and its parts, then puts them in the place of the card kept before. */
async function keep(page, assets) {
  try {
    const answer = await fetch(page);
    // A redirect leads to the sign-in page: nobody is signed in, so nothing is kept.
    if (answer.redirected || !answer.ok) return false;
    // The card can be read without a script or a font that did not come.
    const parts = await Promise.allSettled(assets.map(async (url) => [url, await fetch(url)]));
    await caches.delete(CACHE);
    const cache = await caches.open(CACHE);
    await cache.put(page, answer);
    const came = parts.flatMap(({ value }) => (value?.[1].ok ? [value] : []));
    await Promise.all(came.map(([url, part]) => cache.put(url, part)));
    return true;
  } catch {
    return false;
  }
}

async function card(request) {
  const kept = await caches.match(request, { cacheName: CACHE, ignoreVary: true });
  try {
    const answer = await (kept ? within(PATIENCE_MS, fetch(request)) : fetch(request));
    // Signed out, or the card is no longer this person's to read.
    if (answer.type === "opaqueredirect" || (kept && answer.status === 404)) await caches.delete(CACHE);
    return answer;
  } catch {
    return kept ?? notKept();
  }
}

async function asset(request) {
  const kept = await caches.match(request, { cacheName: CACHE, ignoreVary: true });
  return kept ?? fetch(request);
}

function within(ms, answer) {
  const late = new Promise((_, reject) => setTimeout(() => reject(new Error("too slow")), ms));
  return Promise.race([answer, late]);
}

/** Said when another card than the kept one is asked for without a network. */
async function notKept() {
  const cache = await caches.open(CACHE);
  const keys = await cache.keys();
  const other = keys.map(({ url }) => new URL(url)).find(({ pathname }) => CARD.test(pathname));
  const link = other
    ? `<p><a href="${other.pathname}${other.search.replaceAll("&", "&amp;")}">Open the card kept on this device</a></p>`
    : "<p>No card is kept on this device.</p>";
  const text = `<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>Night card not kept · Ebbline</title>
<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">
<body style="font: 1.125rem/1.5 system-ui, sans-serif; margin: 1.5rem">
<h1>No network, and this card is not kept here</h1>
<p>A card is kept on a device after it was looked at there once, the last one only. Look into the cabinet door for the printed one.</p>${link}`;
  return new Response(text, { status: 503, headers: { "content-type": "text/html; charset=utf-8" } });
}
