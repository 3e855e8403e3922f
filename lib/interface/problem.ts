import type { Declined } from "@/lib/interface/operation";
import type { Problem } from "@/lib/interface/shapes/writes";

interface Kind {
  readonly status: number;
  readonly title: string;
}

/** Every way a request ends without what it asked for. */
export const PROBLEMS = {
  unreadable: { status: 400, title: "The request cannot be read" },
  nameless: { status: 400, title: "A write has no Idempotency-Key" },
  signedOut: { status: 401, title: "No good access key" },
  forbidden: { status: 403, title: "The key does not allow this" },
  missing: { status: 404, title: "There is no such thing" },
  wrongMethod: { status: 405, title: "That is not done here" },
  conflict: { status: 409, title: "It stands otherwise by now" },
  tooLong: { status: 413, title: "The request is too long" },
  invalid: { status: 422, title: "Something in it cannot be used" },
  impossible: { status: 422, title: "The records do not allow it" },
  nameUsed: { status: 422, title: "The Idempotency-Key was used for another request" },
  tooOften: { status: 429, title: "The key asks too often" },
  away: { status: 503, title: "The database does not answer" },
  full: { status: 507, title: "There is no room left on the server's disk" },
} as const satisfies Record<string, Kind>;

export type ProblemKind = keyof typeof PROBLEMS;

/** An answer of RFC 9457: what is wrong, where, what came and what would do. */
export function problemAnswer(
  kind: ProblemKind,
  detail: string,
  more: { readonly fields?: Declined["fields"]; readonly headers?: Readonly<Record<string, string>> } = {},
): Response {
  const { status, title } = PROBLEMS[kind];
  const body: Problem = {
    ...{ type: `/interface/reference#${kind}`, title, status, detail },
    fields: [...(more.fields ?? [])],
  };
  return new Response(JSON.stringify(body), {
    status,
    headers: {
      "Content-Type": "application/problem+json",
      "Cache-Control": "private, no-store",
      ...more.headers,
    },
  });
}
