import { setTimeout as pause } from "node:timers/promises";
import type { BrowserContext, Page } from "@playwright/test";

/** What a page cost a browser that had nothing of it yet. */
export interface FirstLoad {
  /** As they went over the wire, compressed; kB of 1,000. */
  readonly scriptKilobytes: number;
  readonly allKilobytes: number;
  /** Largest contentful paint, ms from the start of the navigation. */
  readonly paint: number;
  /** Sum of layout shifts no input caused. */
  readonly shift: number;
}

const SETTLE_MS = 1500;
/** After this every input of a deed has been painted and told. */
const PAINTED_MS = 400;

/** In the page's own words: what a compiler adds to functions is not known there. */
const WATCH = `
  const seen = (window.ebblineSeen = { paint: 0, shift: 0, inputs: [] });
  const watch = (type, take, options) =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true, ...options });
  watch("largest-contentful-paint", (entry) => { seen.paint = entry.startTime; });
  watch("layout-shift", (entry) => { if (!entry.hadRecentInput) seen.shift += entry.value; });
  watch("event", (entry) => { if (entry.interactionId) seen.inputs.push(entry.duration); }, { durationThreshold: 16 });
`;

/** Collects paints, shifts and slow inputs from before the page's first script. */
export async function watchPaints(context: BrowserContext): Promise<void> {
  await context.addInitScript(WATCH);
}

const BUSY_MS = 150;

/**
 * Proves that slow inputs are seen, since below 16 ms the browser reports nothing and nothing reads as fast.
 *
 * @throws {Error} when a click that keeps the page busy is not measured as long as it took.
 */
export async function proveMeter(page: Page): Promise<void> {
  await page.evaluate(`document.body.addEventListener("click", () => {
    for (const end = performance.now() + ${BUSY_MS}; performance.now() < end; );
  }, { once: true })`);
  const measured = await inputToPaint(page, () => page.mouse.click(2, 2));
  if (measured === null || measured < BUSY_MS)
    throw new Error(`A click of ${BUSY_MS} ms was measured as ${measured}`);
}

interface Seen {
  readonly ebblineSeen: {
    readonly paint: number;
    readonly shift: number;
    inputs: number[];
  };
}

/** Opens a page with an empty cache and waits until it has settled. */
export async function loadFirst(page: Page, address: string): Promise<FirstLoad> {
  const session = await page.context().newCDPSession(page);
  await session.send("Network.enable");
  await session.send("Network.setCacheDisabled", { cacheDisabled: true });
  const kinds = new Map<string, string>();
  const bytes = { script: 0, all: 0 };
  session.on("Network.responseReceived", ({ requestId, type }) => kinds.set(requestId, type));
  session.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => {
    bytes.all += encodedDataLength;
    if (kinds.get(requestId) === "Script") bytes.script += encodedDataLength;
  });
  await page.goto(address, { waitUntil: "load" });
  await pause(SETTLE_MS);
  const { paint, shift } = await page.evaluate(() => (window as unknown as Seen).ebblineSeen);
  await session.send("Network.setCacheDisabled", { cacheDisabled: false });
  await session.detach();
  return { scriptKilobytes: bytes.script / 1000, allKilobytes: bytes.all / 1000, paint, shift };
}

/**
 * Longest time from an input of the deed to the next paint, ms: Event Timing's duration, in steps of 8.
 *
 * Null when every input was painted within 16 ms, below which the browser reports nothing.
 */
export async function inputToPaint(page: Page, deed: () => Promise<void>): Promise<number | null> {
  await page.evaluate(() => {
    (window as unknown as Seen).ebblineSeen.inputs = [];
  });
  await deed();
  await pause(PAINTED_MS);
  const inputs = await page.evaluate(() => (window as unknown as Seen).ebblineSeen.inputs);
  return inputs.length === 0 ? null : Math.max(...inputs);
}
