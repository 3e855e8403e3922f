import { chromium } from "@playwright/test";
import { chromiumProgram } from "@/lib/launch/check/chromium";
import { demoAccounts } from "@/seed/accounts";
import { settled } from "@/test/e2e/support/settled";

/**
 * Walks the screens of a running demonstration in German and prints which texts stayed English, the most seen first.
 *
 * Usage: tsx test/words/walk.ts http://127.0.0.1:3000 /lines /parts …
 */
const [address = "http://127.0.0.1:3000", ...asked] = process.argv.slice(2);

const SCREENS = [
  ...["/home", "/lines", "/lines/PIN-03", "/lines/VEL-03", "/lines/VEL-03/scope", "/installed", "/axes"],
  ...[
    "/parts",
    "/spares",
    "/counts",
    "/care",
    "/repairs",
    "/levels",
    "/cover",
    "/pool",
    "/spend?budget=200k",
  ],
  ...["/review?site=VEL", "/dates", "/plans", "/plans/new?year=2027&budget=1900000", "/plans/inputs"],
  ...[
    "/plans/compare",
    "/projects",
    "/projects/KAR-02-R1",
    "/projects/calendar",
    "/projects/KAR-02-R1/schedule",
  ],
  ...["/projects/KAR-02-R1/axes", "/projects/KAR-02-R1/cutover", "/projects/KAR-02-R1/points"],
  ...["/projects/KAR-02-R1/close", "/projects/KAR-02-R1/benefit", "/projects/KAR-02-R1/money"],
  ...[
    "/report",
    "/report?site=VEL",
    "/report?site=VEL&kind=weekly",
    "/report/archive",
    "/events",
    "/events/new",
  ],
  ...["/notices", "/notices/new", "/import", "/import/sources", "/parts/numbers", "/parts/merge", "/moved"],
  ...["/footing", "/footing?site=VEL", "/footing/firmware-unknown", "/sightings", "/rules", "/assumptions"],
  ...["/export", "/people", "/account", "/interface", "/interface/reference", "/lines/NO-99"],
];

/** Words that are English and nothing else; names and numbers of records have none of them. */
const ENGLISH =
  /(?<![\p{L}-])(the|of|and|is|are|not|no|with|without|for|from|by|to|this|that|these|has|have|it|its|be|can|may|than|least|most|each|every|nothing|known|year|month|weeks?|days?|hours|line|lines|site|sites|parts?|spares?|stock|machine|drive|stop|loss|open|closed|more|less|since|until|usable|unit|units|pieces?|plan|order|ordered|date|last|next|now|here|how|what|which|who|why|when|where)(?![\p{L}-])/iu;

const browser = await chromium.launch({
  args: ["--no-sandbox", "--disable-dev-shm-usage"],
  ...(chromiumProgram() === undefined ? {} : { executablePath: chromiumProgram() }),
});
const context = await browser.newContext({
  baseURL: address,
  locale: "en-GB",
  viewport: { width: 1440, height: 900 },
});
const page = await context.newPage();
page.setDefaultTimeout(120_000);
const said: string[] = [];
page.on("pageerror", (error) => said.push(`${page.url()}: ${error.message}`));
page.on("console", (message) => {
  if (["error", "warning"].includes(message.type())) said.push(`${page.url()}: ${message.text()}`);
});
const { email, password } = demoAccounts.find((one) => one.email.startsWith("admin@")) ?? {
  email: "",
  password: "",
};
await context.request.post("/api/auth/sign-in/email", {
  data: { email, password },
  headers: { Origin: address },
});
await context.addCookies([{ name: "reading", value: "de.space-comma", url: address }]);

const stayed = new Map<string, { count: number; first: string }>();
let texts = 0;
for (const screen of asked.length > 0 ? asked : SCREENS) {
  await page.goto(screen);
  await settled(page);
  const shown = await page.evaluate(() => {
    const found: string[] = [];
    const nodes = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = nodes.nextNode(); node; node = nodes.nextNode()) {
      const inside = node.parentElement?.closest("script, style, code, pre, [translate=no]");
      const text = node.textContent?.trim() ?? "";
      if (!inside && /\p{L}{2}/u.test(text)) found.push(text);
    }
    for (const element of document.querySelectorAll("[aria-label], [title], [placeholder]"))
      for (const name of ["aria-label", "title", "placeholder"]) {
        const text = element.getAttribute(name);
        if (text && !element.closest("[translate=no]")) found.push(text);
      }
    return [document.title, ...found];
  });
  texts += shown.length;
  for (const text of shown) {
    if (!ENGLISH.test(text)) continue;
    const seen = stayed.get(text) ?? { count: 0, first: screen };
    stayed.set(text, { ...seen, count: seen.count + 1 });
  }
}
await browser.close();

const english = [...stayed].sort(([, a], [, b]) => b.count - a.count);
const nodes = english.reduce((sum, [, { count }]) => sum + count, 0);
const lines = english.map(([text, { count, first }]) => `${count} ${first} ${text}`);
process.stdout.write(
  `${lines.join("\n")}\n\n${nodes} of ${texts} texts seem English (${english.length} different)\n${said.join("\n")}\n`,
);
