import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import { alongTheBins, bookOf, compareCount } from "@/lib/data/stock/compareCount";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { TypedCount } from "@/lib/schema/count";
import {
  blankCount,
  type ComparedLine,
  type CountLine as CountedLine,
  type CountSheet,
  type ListedCount,
} from "@/lib/view/count";
import type { CountLine, Part, StockCount } from "@/prisma/generated/client";

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;
const knownDay = (date: Date): IsoDate => date.toISOString().slice(0, 10);

/** The counts of the actor's sites, those under way first, then the newest. */
export async function readCounts(actor: Actor): Promise<ListedCount[]> {
  const rows = await database().stockCount.findMany({
    where: atSites(actor, "read"),
    include: {
      site: { select: { code: true, name: true } },
      lines: { select: { found: true } },
    },
    orderBy: [{ postedOn: { sort: "desc", nulls: "first" } }, { openedOn: "desc" }, { reference: "desc" }],
  });
  return rows.map(({ lines, ...count }) => ({
    ...listed(count),
    lines: lines.length,
    counted: lines.filter(({ found }) => found !== null).length,
  }));
}

function listed(count: StockCount & { site: { code: string; name: string } }) {
  const { id, reference, bins, blind, openedBy, postedBy, site } = count;
  return {
    ...{ id, reference, bins, blind, openedBy, postedBy },
    ...{ siteCode: site.code, siteName: site.name },
    openedOn: knownDay(count.openedOn),
    postedOn: dayOf(count.postedOn),
  };
}

type FoundLine = CountLine & { part: Part | null };

async function findCount(actor: Actor, id: string) {
  if (!z.uuid().safeParse(id).success) return null;
  return database().stockCount.findFirst({
    where: { id, ...atSites(actor, "read") },
    include: {
      site: { select: { code: true, name: true } },
      lines: {
        include: { part: true },
        orderBy: [...alongTheBins],
      },
    },
  });
}

/** A count's sheet as whoever counts sees it; null when the actor may read none such. */
export async function readCountSheet(actor: Actor, id: string): Promise<CountSheet | null> {
  const count = await findCount(actor, id);
  if (!count) return null;
  const { siteId, approvedBy, lines } = count;
  const shown = !count.blind || count.postedOn !== null;
  return {
    ...listed(count),
    ...{ siteId, approvedBy, approvedOn: dayOf(count.approvedOn) },
    limitEuro: count.limitEuro.toNumber(),
    lines: lines.map((line) => sheetLine(line, shown)),
    mayCount: mayAt(actor.grants, "event:write", siteId),
    mayPost: mayAt(actor.grants, "stock:write", siteId),
  };
}

function sheetLine(line: FoundLine, shown: boolean): CountedLine {
  const { id, bin, revision, plate, countedBy, version, part, bookState } = line;
  return {
    ...{ id, bin, revision, plate, countedBy, version },
    part: part?.number ?? null,
    description: part?.description ?? null,
    isFind: bookState === null,
    book: shown ? bookOf(line) : null,
    entry: typedOf(line, shown),
  };
}

function typedOf(line: CountLine, shown: boolean): TypedCount {
  const { found, state, tested, originUnknown, holdReason, note } = line;
  if (found === null && state === null) return blankCount((shown && line.bookState) || "usable");
  return {
    ...{ found: found === null ? "" : String(found), state: state ?? "usable" },
    lastPoweredOn: dayOf(line.lastPoweredOn) ?? "",
    tested: tested === null ? "" : tested ? "yes" : "no",
    ...{ originUnknown, holdReason, note },
  };
}

/** The same count against the book, for whoever posts it; null for everybody else. */
export async function readCountVariance(
  actor: Actor,
  id: string,
): Promise<{ readonly sheet: CountSheet; readonly lines: readonly ComparedLine[] } | null> {
  const sheet = await readCountSheet(actor, id);
  if (!sheet?.mayPost) return null;
  return { sheet, lines: await compareCount(database(), id) };
}
