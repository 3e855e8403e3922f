import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { ReportForm } from "@/lib/schema/report";
import { type IssueChoice, type IssueMark, issueFileName } from "@/lib/view/reportArchive";
import type { ReportDocument } from "@/lib/view/reportDocument";
import type { Prisma } from "@/prisma/generated/client";

const MOST_LISTED = 500;
const UUID = /^[0-9a-f-]{36}$/;

const markFields = {
  ...{ id: true, kind: true, period: true, asOf: true, dataVersion: true, engine: true },
  ...{ issuedBy: true, issuedAt: true },
  site: { select: { code: true, name: true } },
} satisfies Prisma.ReportIssueSelect;

/** A kept report with what it says. */
export interface KeptIssue {
  readonly mark: IssueMark;
  readonly document: ReportDocument;
}

/** A kept file as it was given out. */
export interface KeptFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** SHA-256, hex. */
  readonly hash: string;
}

/** The reports that were given out for the sites the actor may read, the latest period first; the group's only to who reads all. */
export async function readIssues(actor: Actor, { kind, of }: IssueChoice): Promise<IssueMark[]> {
  const site = of === null ? {} : of === "group" ? { siteId: null } : { site: { code: of } };
  const rows = await database().reportIssue.findMany({
    where: { AND: [atSites(actor, "read"), kind === null ? {} : { kind }, site] },
    select: markFields,
    orderBy: [{ asOf: "desc" }, { issuedAt: "desc" }, { id: "desc" }],
    take: MOST_LISTED,
  });
  const sizes = await readSizes(
    actor,
    rows.map(({ id }) => id),
  );
  return rows.map((row) => markOf(row, sizes));
}

/** One kept report; null when there is none or it is of a site the actor may not read. */
export async function readIssue(actor: Actor, id: string): Promise<KeptIssue | null> {
  if (!UUID.test(id)) return null;
  const row = await database().reportIssue.findFirst({
    where: { id, ...atSites(actor, "read") },
    select: { ...markFields, document: true },
  });
  if (!row) return null;
  const { document, ...mark } = row;
  return {
    mark: markOf(mark, await readSizes(actor, [id])),
    document: document as unknown as ReportDocument,
  };
}

/** One file of a kept report, byte for byte. */
export async function readIssueFile(
  actor: Actor,
  { id, form }: { readonly id: string; readonly form: ReportForm },
): Promise<KeptFile | null> {
  if (!UUID.test(id)) return null;
  const row = await database().reportFile.findFirst({
    where: { issueId: id, form, issue: atSites(actor, "read") },
    select: {
      ...{ bytes: true, hash: true },
      issue: { select: { kind: true, period: true, site: { select: { code: true } } } },
    },
  });
  if (!row) return null;
  const { kind, period, site } = row.issue;
  return {
    name: issueFileName({ kind, period, siteCode: site?.code ?? null }, form),
    bytes: row.bytes,
    hash: row.hash,
  };
}

interface Size {
  readonly issueId: string;
  readonly form: ReportForm;
  readonly hash: string;
  readonly bytes: number;
}

/** How large the files are, without reading them. */
async function readSizes(_actor: Actor, ids: readonly string[]): Promise<Map<string, Size[]>> {
  const rows = await database().$queryRaw<Size[]>`
    SELECT "issueId"::text AS "issueId", "form"::text AS "form", "hash", length("bytes") AS "bytes"
    FROM "ReportFile" WHERE "issueId" = ANY(${[...ids]}::uuid[]) ORDER BY "form"`;
  const byIssue = new Map<string, Size[]>();
  for (const row of rows) byIssue.set(row.issueId, [...(byIssue.get(row.issueId) ?? []), row]);
  return byIssue;
}

function markOf(
  { site, asOf, issuedAt, dataVersion, ...row }: Prisma.ReportIssueGetPayload<{ select: typeof markFields }>,
  sizes: ReadonlyMap<string, readonly Size[]>,
): IssueMark {
  return {
    ...row,
    siteCode: site?.code ?? null,
    siteName: site?.name ?? null,
    asOf: asOf.toISOString().slice(0, 10),
    dataVersion: Number(dataVersion),
    issuedAt: issuedAt.toISOString(),
    files: (sizes.get(row.id) ?? []).map(({ form, hash, bytes }) => ({ form, hash, bytes })),
  };
}
