import { moduleOf } from "@/test/support/access/endpoints";
import { inRequest } from "@/test/support/access/inRequest";
import type { RouteRule } from "@/test/support/access/routes";
import type { Known } from "@/test/support/access/sampleInput";
import type { Opened } from "@/test/support/access/tryPage";

const root = `${import.meta.dirname}/../../..`;
const HOME = "http://127.0.0.1:3999";

type Handler = (request: Request, context: object) => Promise<Response>;

/** Asks a route as the server does; what it says is read to the end where it is words. */
export async function tryRoute(
  cookie: string | null,
  { name, rule, known }: { readonly name: string; readonly rule: RouteRule; readonly known: Known },
): Promise<Opened> {
  const [method = "", address = ""] = name.split(" ");
  const [, , params = {}, search = {}] = rule;
  const module = await import(/* @vite-ignore */ `${root}/${moduleOf(address.slice(1), "route.ts")}`);
  const handler = module[method] as Handler;
  const query = new URLSearchParams(
    Object.entries(search).map(([field, thing]) => [field, String(known[thing] ?? thing)]),
  );
  const request = new Request(`${HOME}${address}?${query}`, {
    ...{ method, headers: { origin: HOME, host: "127.0.0.1:3999" } },
    ...(method === "POST" ? { body: "x" } : {}),
  });
  const named = Object.fromEntries(Object.entries(params).map(([field, thing]) => [field, known[thing]]));
  const answer = await inRequest(cookie, () => handler(request, { params: Promise.resolve(named) }));
  const isText = /json|text/.test(answer.headers.get("content-type") ?? "");
  const words = isText ? await answer.text() : "";
  await answer.body?.cancel().catch(() => undefined);
  // Somebody without a role is told to sign in as another.
  if (answer.status === 401) return { verdict: cookie === null ? "sign in" : "not there", words };
  return { verdict: answer.status === 403 || answer.status === 404 ? "not there" : "let in", words };
}
