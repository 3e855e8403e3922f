import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import type { SliceAsked } from "@/lib/data/interface/slice";
import { type Operation, operation } from "@/lib/interface/operation";
import { ok } from "@/lib/kernel/result";

const MOST_ROWS = 500;
const USUAL_ROWS = 100;
const CURSOR = /^v1:([0-9a-f-]{36})$/;

/** The way on after a row, as a caller gets it: opaque, so that it may come to hold more. */
const cursorAfter = (id: string) => Buffer.from(`v1:${id}`).toString("base64url");

const cursor = z
  .string()
  .describe('"next" of the page before; leave it out for the first page.')
  .transform((text, context) => {
    const id = CURSOR.exec(Buffer.from(text, "base64url").toString())?.[1];
    if (id !== undefined && z.uuid().safeParse(id).success) return id;
    context.addIssue({ code: "custom", message: "Take `next` of a page as it came.", input: text });
    return z.NEVER;
  });

const page = {
  limit: z.coerce
    .number("Write a whole number.")
    .int("Write a whole number.")
    .min(1, "Ask for 1 row or more.")
    .max(MOST_ROWS, `Ask for at most ${MOST_ROWS} rows.`)
    .default(USUAL_ROWS)
    .describe("Rows on a page."),
  after: cursor.optional(),
};

export const paged = z.strictObject(page);
export const pagedAtSite = z.strictObject({
  ...page,
  siteId: z.uuid("Write the id of a site.").optional().describe("Only of this site."),
});

interface Listing<Q extends z.ZodObject, R extends z.ZodType> {
  readonly path: string;
  readonly name: string;
  readonly title: string;
  readonly text: string;
  readonly query: Q;
  readonly row: R;
  /** Name of the page in the document, such as `LinePage`. */
  readonly pageName: string;
  readonly slice: (actor: Actor, asked: SliceAsked, query: z.output<Q>) => Promise<z.output<R>[]>;
}

/** A list read page by page in the order of ids: a page is as quick at the end as at the beginning. */
export function listing<Q extends z.ZodObject, R extends z.ZodType<{ readonly id: string }>>(
  recipe: Listing<Q, R>,
): Operation {
  const { path, name, title, text, query, row, pageName, slice } = recipe;
  const answer = z.strictObject({
    items: z.array(row),
    next: z.string().nullable().describe('What to give as "after" for the next page; null is the last.'),
  });
  return operation({
    ...{ method: "GET", path, name, title, text, needs: "read", query, body: null, answer },
    answerName: pageName,
    run: async (actor, asked) => {
      const { limit, after = null, siteId = null } = asked.query as z.output<typeof pagedAtSite>;
      // One row more than shown tells whether there is a next page.
      const rows = await slice(actor, { most: limit + 1, after, siteId }, asked.query);
      const items = rows.slice(0, limit);
      const last = rows.length > limit ? items.at(-1) : undefined;
      return ok({ items, next: last ? cursorAfter(last.id) : null });
    },
  });
}
