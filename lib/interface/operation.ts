import { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { err, type Result } from "@/lib/kernel/result";

export type Method = "GET" | "POST" | "PATCH" | "DELETE";

/** What a request brings before any of it was looked at. */
export interface Brought {
  /** What stands for `{id}` in the path; empty where there is none. */
  readonly id: string;
  readonly query: Readonly<Record<string, string>>;
  /** JSON value, or bytes where the operation takes a file. */
  readonly body: unknown;
}

/** A field that cannot be used: what came, and what would do. */
export interface BadField {
  readonly field: string;
  readonly got: string;
  readonly cure: string;
}

/** A refusal, with the fields it is about where the request itself is at fault. */
export interface Declined extends Omit<Refusal, "fields"> {
  readonly fields: readonly BadField[];
}

interface Described {
  readonly method: Method;
  /** Below /api/v1, with `{id}` where a thing is named. */
  readonly path: string;
  /** Unique; what programs made from the document call it. */
  readonly name: string;
  /** A few words. */
  readonly title: string;
  /** A sentence or two. */
  readonly text: string;
  readonly needs: Deed;
  /** 201 where it makes something; else 200. */
  readonly status?: 201;
}

/** One thing the interface does; what is documented is what is run. */
export interface Operation extends Described {
  readonly query: z.ZodObject;
  /** Of a JSON body, null without one; "file" takes bytes as they are. */
  readonly body: z.ZodType | "file" | null;
  readonly answer: z.ZodType;
  /** Name of the answer in the document. */
  readonly answerName: string;
  readonly run: (actor: Actor, brought: Brought) => Promise<Result<unknown, Declined>>;
}

interface Recipe<Q extends z.ZodObject, B extends z.ZodType, A extends z.ZodType> extends Described {
  readonly query: Q;
  readonly body: B | "file" | null;
  readonly answer: A;
  readonly answerName: string;
  readonly run: (actor: Actor, asked: Asked<Q, B>) => Promise<Result<z.output<A>, Refusal>>;
}

interface Asked<Q extends z.ZodType, B extends z.ZodType> {
  readonly id: string;
  readonly query: z.output<Q>;
  readonly body: z.output<B>;
}

const noThing: Refusal = { code: "missing", reason: "There is no such thing where you may do this." };

/** A query without parameters. */
export const noQuery = z.strictObject({});

/** Ties an operation to the schemas it reads its request by. */
export function operation<Q extends z.ZodObject, B extends z.ZodType, A extends z.ZodType>(
  recipe: Recipe<Q, B, A>,
): Operation {
  const bodyRule = recipe.body === "file" || recipe.body === null ? z.unknown() : recipe.body;
  return {
    ...recipe,
    run: async (actor, { id, query, body }) => {
      // An id that cannot be one is of nothing, as one that is nobody's.
      if (recipe.path.includes("{id}") && !z.uuid().safeParse(id).success) return declined(noThing);
      const asked = recipe.query.safeParse(query, { reportInput: true });
      if (!asked.success) return unusable(asked.error);
      const read = bodyRule.safeParse(body, { reportInput: true });
      if (!read.success) return unusable(read.error);
      const done = await recipe.run(actor, { id, query: asked.data, body: read.data as z.output<B> });
      return done.ok ? done : declined(done.error, body);
    },
  };
}

/** A refusal of the product, with what came for each field it names. */
function declined({ fields = {}, ...refusal }: Refusal, body?: unknown): Result<never, Declined> {
  const came = (typeof body === "object" && body !== null ? body : {}) as Record<string, unknown>;
  const bad = Object.entries(fields).map(([field, cure]) => ({ field, got: shown(came[field]), cure }));
  return err({ ...refusal, fields: bad });
}

function unusable(error: z.ZodError): Result<never, Declined> {
  const fields = error.issues.map((issue): BadField => {
    if (issue.code === "unrecognized_keys")
      return { field: issue.keys.join(", "), got: "something", cure: "Leave it out: nothing has this name." };
    return { field: issue.path.join("."), got: shown(issue.input), cure: issue.message };
  });
  return err({ code: "invalid", reason: "Some of the request cannot be used. Nothing was changed.", fields });
}

const MOST_SHOWN = 120;

function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text;
}
