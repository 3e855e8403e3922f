import { type Browser, chromium, type Page } from "@playwright/test";
import { database } from "@/lib/data/client";
import { chromiumProgram } from "@/lib/launch/check/chromium";
import { live } from "@/lib/launch/live";
import { inputToPaint, loadFirst, proveMeter, watchPaints } from "@/test/bench/browserMeters";
import { openLarge } from "@/test/bench/largeDatabase";
import { addPeople } from "@/test/bench/loadPeople";
import { machine } from "@/test/bench/machine";
import { serveApp } from "@/test/bench/servedApp";

const MOST_SCRIPT_KB = 200;
const MOST_INPUT_MS = 100;
const ROUNDS = 5;
const PATIENCE_MS = 180_000;

let missed = 0;

function row(cells: readonly string[]): void {
  console.log(`| ${cells.join(" | ")} |`);
}

/** Remembers a miss and says so in the table. */
function held(isMet: boolean): string {
  if (!isMet) missed += 1;
  return isMet ? "yes" : "no";
}

async function open(browser: Browser, address: string, cookie: string | null): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: "en-GB" });
  const [name = "", value = ""] = cookie?.split("=") ?? [];
  if (cookie !== null) await context.addCookies([{ name, value, url: address }]);
  // A server that has just started works the whole group out before it answers.
  context.setDefaultNavigationTimeout(PATIENCE_MS);
  await watchPaints(context);
  return context.newPage();
}

interface Input {
  readonly name: string;
  readonly deed: (page: Page) => Promise<void>;
}

async function measureInputs(page: Page, name: string, inputs: readonly Input[]): Promise<void> {
  for (const input of inputs) {
    const times: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1)
      times.push((await inputToPaint(page, () => input.deed(page))) ?? 16);
    times.sort((a, b) => a - b);
    const [median = 0, worst = 0] = [times[Math.floor(ROUNDS / 2)], times.at(-1)];
    const says = (ms: number) => (ms <= 16 ? "at most 16 ms" : `${ms} ms`);
    row([name, input.name, says(median), says(worst), held(worst < MOST_INPUT_MS)]);
  }
}

interface Measured {
  readonly name: string;
  readonly path: string;
  readonly inputs: readonly Input[];
  /** Held to the most that scripts may weigh. */
  readonly bound: boolean;
}

const head = (page: Page, column: string) =>
  page.locator("thead").first().getByRole("button", { name: column });
const filter = (page: Page) => page.locator("[data-table-filter]").first();

const LINES: readonly Input[] = [
  { name: "sort 1,500 lines", deed: (page) => head(page, "Score 0 to 100").click() },
  {
    name: "filter 1,500 lines, a letter",
    deed: async (page) => {
      await filter(page).click();
      await page.keyboard.press("1");
    },
  },
  {
    name: "clear the filter",
    deed: async (page) => {
      await filter(page).click();
      await page.keyboard.press("Control+a");
      await page.keyboard.press("Delete");
    },
  },
  { name: "open the column menu", deed: (page) => toggleColumns(page) },
];
const LINE: readonly Input[] = [
  { name: "expand machines and axes", deed: (page) => page.locator("#machines summary").first().click() },
  { name: "expand the arithmetic", deed: (page) => page.locator("#arithmetic summary").first().click() },
];
const AXES: readonly Input[] = [
  { name: "scroll through axes by keys", deed: (page) => walk(page) },
  { name: "sort 120,000 axes", deed: (page) => head(page, "Axis").click() },
  {
    name: "filter 120,000 axes by network",
    deed: async (page) => {
      await page.getByLabel("Show only Network").focus();
      await page.keyboard.press("ArrowDown");
    },
  },
];

async function toggleColumns(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Columns" }).first().click();
  // The menu comes with its own script when somebody first wants it; a key before that goes nowhere.
  await page.getByRole("menu").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("menu").waitFor({ state: "hidden" });
}

async function walk(page: Page): Promise<void> {
  await page.locator("[data-row-link]").first().focus();
  for (let step = 0; step < 10; step += 1) await page.keyboard.press("PageDown");
}

await live(async (life) => {
  process.env.DATABASE_URL = await openLarge(life);
  life.endWith(() => database().$disconnect());
  const app = await serveApp(process.env.DATABASE_URL, life);
  const people = await addPeople(1, app.secret);
  life.endWith(people.remove);
  const [line, part] = await Promise.all([
    database().line.findFirstOrThrow({ orderBy: { code: "asc" }, skip: 7 }),
    database().part.findFirstOrThrow({ orderBy: { id: "asc" }, skip: 7 }),
  ]);
  const browser = await chromium.launch({
    executablePath: chromiumProgram(),
    args: ["--no-sandbox", "--disable-dev-shm-usage", "--disable-background-networking", "--disable-gpu"],
  });
  life.endWith(() => browser.close());
  console.log(`${machine()} · Chromium ${browser.version()}\n`);
  const pages: readonly Measured[] = [
    { name: "ranking", path: "/lines", inputs: LINES, bound: true },
    { name: "line", path: `/lines/${line.code}`, inputs: LINE, bound: true },
    { name: "axes", path: "/axes", inputs: AXES, bound: false },
    { name: "part", path: `/parts/${part.id}`, inputs: [], bound: false },
    { name: "sign-in", path: "/sign-in", inputs: [], bound: false },
  ];
  row(["page", "scripts over the wire", "all", "largest paint", "layout shift", "met"]);
  row(Array.from({ length: 6 }, () => "---"));
  const opened = new Map<string, Page>();
  for (const { name, path, bound } of pages) {
    // Once before: what is measured is the browser's part, with a server that has seen the page.
    await fetch(`${app.address}${path}`, { headers: { Cookie: people.cookies[0] ?? "" } });
    const cookie = name === "sign-in" ? null : (people.cookies[0] ?? null);
    const page = await open(browser, app.address, cookie);
    const first = await loadFirst(page, `${app.address}${path}`);
    opened.set(name, page);
    row([
      ...[name, `${first.scriptKilobytes.toFixed(1)} kB`, `${first.allKilobytes.toFixed(1)} kB`],
      ...[`${first.paint.toFixed(0)} ms`, first.shift.toFixed(3)],
      bound ? held(first.scriptKilobytes <= MOST_SCRIPT_KB) : "",
    ]);
  }
  for (const page of [...opened.values()].slice(0, 1)) await proveMeter(page);
  console.log("");
  row(["page", "input", `median of ${ROUNDS}, to the next paint`, "slowest", "met"]);
  row(Array.from({ length: 5 }, () => "---"));
  for (const { name, inputs } of pages) {
    const page = opened.get(name);
    if (page) await measureInputs(page, name, inputs);
  }
  return missed === 0 ? 0 : 1;
}, 1);
