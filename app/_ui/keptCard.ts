/** The name under which the card worker keeps its one card; the same stands in `public/card-worker.js`. */
const CACHE = "ebbline-card";

const WORKER = "/card-worker.js";
/** The worker sees requests below this path only. */
const SCOPE = "/machines/";

/** Throws away the card kept on this device: whoever signs in next must not find that of the last person. */
export async function forgetCard(): Promise<void> {
  if ("caches" in window) await caches.delete(CACHE);
}

/** Whether the page that is open lies on this device. */
export async function isKept(): Promise<boolean> {
  if (!("caches" in window)) return false;
  return (await caches.match(window.location.href, { cacheName: CACHE, ignoreVary: true })) !== undefined;
}

/**
 * Keeps the page on this device for use without a network, in the place of the card kept before.
 *
 * @returns Whether it is kept; a browser without workers, or a plain-http address of a plant network, keeps nothing.
 */
export async function keepCard(): Promise<boolean> {
  if (!("serviceWorker" in navigator)) return false;
  try {
    await navigator.serviceWorker.register(WORKER, { scope: SCOPE });
    const { active } = await navigator.serviceWorker.ready;
    if (active === null) return false;
    const answer = new Promise<boolean>((resolve) => {
      const hear = ({ data }: MessageEvent<{ readonly kept: boolean }>) => resolve(data.kept);
      navigator.serviceWorker.addEventListener("message", hear, { once: true });
    });
    const { origin, pathname, search } = window.location;
    // On the first page of a visit scripts still come while the first of them run.
    await loaded();
    active.postMessage({ page: `${origin}${pathname}${search}`, assets: assetsOf(origin) });
    return await answer;
  } catch {
    return false;
  }
}

function loaded(): Promise<void> {
  if (document.readyState === "complete") return Promise.resolve();
  return new Promise((resolve) => {
    window.addEventListener("load", () => resolve(), { once: true });
  });
}

/** Scripts, styles and fonts the page has used. */
function assetsOf(origin: string): string[] {
  const loaded = performance.getEntriesByType("resource").map(({ name }) => name);
  const named = [...document.querySelectorAll<HTMLScriptElement>("script[src]")].map(({ src }) => src);
  const styles = [...document.querySelectorAll<HTMLLinkElement>("link[rel=stylesheet]")].map(
    ({ href }) => href,
  );
  return [...new Set([...loaded, ...named, ...styles])].filter((url) =>
    url.startsWith(`${origin}/_next/static/`),
  );
}
