import { moduleOf } from "@/test/support/access/endpoints";
import { inRequest } from "@/test/support/access/inRequest";
import type { Verdict } from "@/test/support/access/people";
import type { PageRule } from "@/test/support/access/rules";
import type { Known } from "@/test/support/access/sampleInput";

const root = `${import.meta.dirname}/../../..`;

export interface Opened {
  readonly verdict: Verdict;
  /** Every word and number that leaves for the browser, drawn or not; "" where nothing does. */
  readonly words: string;
}

type Page = (given: {
  readonly params: Promise<Readonly<Record<string, string>>>;
  readonly searchParams: Promise<Readonly<Record<string, string>>>;
}) => unknown;

/**
 * Opens a page as the framework does. Pages read and their parts are dumb, so what a page hands down is all there is.
 */
export async function tryPage(
  cookie: string | null,
  { address, rule, known }: { readonly address: string; readonly rule: PageRule; readonly known: Known },
): Promise<Opened> {
  const [, , fields = {}, search = {}] = rule;
  const params = Object.fromEntries(
    Object.entries(fields).map(([name, thing]) => [name, String(known[thing])]),
  );
  const module = await import(/* @vite-ignore */ `${root}/${moduleOf(address.slice(1), "page.tsx")}`);
  const page = module.default as Page;
  try {
    const given = { params: Promise.resolve(params), searchParams: Promise.resolve(search) };
    const shown = await inRequest(cookie, async () => page(given));
    return isClosed(shown)
      ? { verdict: "not there", words: "" }
      : { verdict: "let in", words: wordsOf(shown) };
  } catch (error) {
    return { verdict: refusedBy(error), words: "" };
  }
}

/** A page that says no more than that it is not yours. */
const isClosed = (shown: unknown) =>
  (shown as { type?: { name?: string } } | null)?.type?.name === "NotYours";

/** The framework ends a page by throwing: `…;404` where there is nothing, the address where it leads away. */
function refusedBy(error: unknown): Verdict {
  const digest = String((error as { digest?: unknown } | null)?.digest ?? "");
  if (digest.startsWith("NEXT_HTTP_ERROR_FALLBACK;404")) return "not there";
  if (digest.startsWith("NEXT_REDIRECT")) return digest.includes("/sign-in") ? "sign in" : "not there";
  throw error;
}

/** Texts and numbers anywhere in what is handed down. */
export function wordsOf(shown: unknown): string {
  const found: string[] = [];
  const seen = new Set<unknown>();
  const open: unknown[] = [shown];
  while (open.length > 0) {
    const one = open.pop();
    if (typeof one === "string" || typeof one === "number") found.push(String(one));
    if (seen.has(one)) continue;
    seen.add(one);
    open.push(...within(one));
  }
  return found.join("\n");
}

/** What the framework keeps for itself at an element. */
const INNER = new Set(["_owner", "_store", "_debugInfo", "_debugStack", "_debugTask"]);

function within(one: unknown): readonly unknown[] {
  if (typeof one !== "object" || one === null || ArrayBuffer.isView(one)) return [];
  if (one instanceof Map) return [...one.keys(), ...one.values()];
  if (one instanceof Set) return [...one];
  return Object.entries(one).flatMap(([name, value]) => (INNER.has(name) ? [] : [value]));
}
