import { createHash } from "node:crypto";
import type { Knock } from "@/lib/access/accessKey";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, withAmounts } from "@/lib/access/policy";
import { noteSecurity, noteTrouble } from "@/lib/access/securityLog";
import { troubleOf } from "@/lib/access/trouble";
import { readDataVersion } from "@/lib/data/dataVersion";
import { NameUsedBefore, StillBeingDone } from "@/lib/data/interface/keptAnswer";
import type { Operation } from "@/lib/interface/operation";
import { findOperation, ROOT } from "@/lib/interface/operations";
import { problemAnswer } from "@/lib/interface/problem";
import { readBody, TooLong, Unreadable } from "@/lib/interface/readBody";
import { watchRequest } from "@/lib/metrics/meters";

/** Printable ASCII, as the header's draft of the IETF (`draft-ietf-httpapi-idempotency-key-header`) has it. */
const REQUEST_NAME = /^[\x21-\x7e]{8,200}$/;

/**
 * Answers a request of another system.
 *
 * @param knocking Who asks, being found out.
 * @param path     What follows /api/v1, in its parts.
 */
export async function serve(
  request: Request,
  knocking: Promise<Knock>,
  path: readonly string[],
): Promise<Response> {
  const method = request.method === "HEAD" ? "GET" : request.method;
  const found = findOperation(method, path);
  const pattern = "operation" in found ? found.operation.path : "/unknown";
  return watchRequest({ method, route: `${ROOT}${pattern}` }, async () => {
    try {
      const knock = await knocking;
      if (knock.kind === "nobody") {
        noteSecurity({ event: "request refused", userId: null, what: `${method} ${pattern}`, why: "key" });
        return nobody();
      }
      if (knock.kind === "tooOften") return tooOften(knock.waitSeconds);
      if (!("operation" in found)) return found.allowed.length === 0 ? noPath() : wrongMethod(found.allowed);
      return await perform(request, knock.actor, found);
    } catch (error) {
      return atFault(error);
    }
  });
}

interface Found {
  readonly operation: Operation;
  readonly id: string;
}

async function perform(request: Request, actor: Actor, { operation, id }: Found): Promise<Response> {
  if (!maySomewhere(actor.grants, operation.needs)) {
    const { userId, key } = actor;
    noteSecurity({
      event: "request refused",
      userId,
      what: operation.needs,
      why: `key ${key?.id ?? "none"}`,
    });
    return problemAnswer(
      "forbidden",
      `This needs the right "${operation.needs}", which the key or its person lacks. Make a key with it.`,
    );
  }
  const query = Object.fromEntries(new URL(request.url).searchParams);
  if (operation.method === "GET") {
    // Read, as a page is, as somebody who has no role where amounts are not shown.
    return read(request, { ...actor, grants: withAmounts(actor.grants) }, { operation, id, query });
  }
  const name = request.headers.get("Idempotency-Key") ?? "";
  if (!REQUEST_NAME.test(name))
    return problemAnswer(
      "nameless",
      "Give each write a header Idempotency-Key of 8 to 200 printable letters without blanks, such as a new UUID, and the same one again when you send it again.",
    );
  const { value, bytes } = await readBody(request, operation.body);
  const hash = hashOf(operation.method, new URL(request.url), bytes);
  const asked = { ...actor, request: { name, hash } };
  const done = await operation.run(asked, { id, query, body: value });
  if (!done.ok) return declinedAnswer(done.error);
  return jsonAnswer(JSON.stringify(done.value), { status: operation.status ?? 200 });
}

/** What a request is known by: the same name with another hash is another request. */
function hashOf(method: string, { pathname, search }: URL, bytes: Uint8Array): string {
  return createHash("sha256").update(`${method} ${pathname}${search}\n`).update(bytes).digest("hex");
}

interface Read extends Found {
  readonly query: Readonly<Record<string, string>>;
}

async function read(request: Request, actor: Actor, { operation, id, query }: Read): Promise<Response> {
  // Read before the rows: they may be newer than the version says, never older.
  const version = await readDataVersion(actor);
  const done = await operation.run(actor, { id, query, body: undefined });
  if (!done.ok) return declinedAnswer(done.error);
  const body = JSON.stringify(done.value);
  const tag = `"${createHash("sha256").update(body).digest("base64url")}"`;
  const headers = { ETag: tag, "Ebbline-Data-Version": String(version) };
  if (isSame(request.headers.get("If-None-Match"), tag))
    return new Response(null, { status: 304, headers: { ...headers, ...PRIVATE } });
  return jsonAnswer(body, { headers });
}

/** Whether a caller holds the answer already (RFC 9110, weak comparison). */
function isSame(held: string | null, tag: string): boolean {
  return (held ?? "").split(",").some((one) => one.trim().replace(/^W\//, "") === tag);
}

const PRIVATE = { "Cache-Control": "private, no-cache", Vary: "Authorization" };

function jsonAnswer(
  body: string,
  {
    status = 200,
    headers = {},
  }: { readonly status?: number; readonly headers?: Readonly<Record<string, string>> },
): Response {
  const type = { "Content-Type": "application/json; charset=utf-8" };
  return new Response(body, { status, headers: { ...type, ...PRIVATE, ...headers } });
}

type Refused = Extract<Awaited<ReturnType<Operation["run"]>>, { readonly ok: false }>["error"];

const declinedAnswer = ({ code, reason, fields }: Refused) => problemAnswer(code, reason, { fields });

/** One answer for every key that is not good, so that none can be found out. */
function nobody(): Response {
  const detail =
    "Give an access key in the header Authorization: Bearer ebb_… It may be mistyped, expired, revoked or without its person.";
  return problemAnswer("signedOut", detail, { headers: { "WWW-Authenticate": 'Bearer realm="Ebbline"' } });
}

function tooOften(seconds: number): Response {
  const detail = `Wait ${seconds} s and ask again; pages with more rows need fewer requests.`;
  return problemAnswer("tooOften", detail, { headers: { "Retry-After": String(seconds) } });
}

const noPath = () =>
  problemAnswer("missing", "Nothing lies at this address. /api/v1/openapi.json lists what there is.");

function wrongMethod(allowed: readonly string[]): Response {
  const methods = allowed.join(", ");
  return problemAnswer("wrongMethod", `This address takes ${methods}.`, { headers: { Allow: methods } });
}

/** What a request itself is to blame for, and what passes by itself; anything else is not caught. */
function atFault(error: unknown): Response {
  if (error instanceof NameUsedBefore)
    return problemAnswer(
      "nameUsed",
      "Use a new name for a new request, and the old one only to send the same again.",
    );
  if (error instanceof StillBeingDone)
    return problemAnswer("conflict", "The same request is still being done. Send it again in a while.", {
      headers: { "Retry-After": "30" },
    });
  if (error instanceof TooLong) return problemAnswer("tooLong", error.message);
  if (error instanceof Unreadable) return problemAnswer("unreadable", error.message);
  const trouble = troubleOf(error);
  if (trouble === null) throw error;
  noteTrouble("interface", error);
  return problemAnswer(
    trouble,
    "Send the same again later under the same Idempotency-Key; it is done once.",
    {
      headers: { "Retry-After": "10" },
    },
  );
}
