import "server-only";
import { createHash } from "node:crypto";
import type { Transaction } from "@/lib/data/change";
import { findSuccessorLoops } from "@/lib/intake/findSuccessorLoops";
import { matchParts, type PartPattern, readPatterns, successorKey } from "@/lib/intake/notice/partPattern";
import type { MadePart } from "@/lib/intake/notice/readNotice";
import { partKey } from "@/lib/intake/readPartNumber";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { orderBy } from "@/lib/lifecycle/orderBy";
import type { NoticeFields } from "@/lib/schema/notice";
import { clashOf, type DatedFact, mergeNoticeDates, type NoticeDates } from "@/lib/view/noticeDates";

/** A part on record, its family and the statements that hold for it. */
interface KnownPart extends MadePart {
  readonly familyId: string | null;
  readonly ownFact: DatedFact | null;
  readonly familyFact: DatedFact | null;
}

/** A part the notice speaks of, before and after. */
export interface PlannedPart {
  readonly part: KnownPart;
  readonly before: DatedFact | null;
  readonly after: NoticeDates;
  readonly source: string;
  /** Written once for all parts of the family. */
  readonly byFamily: boolean;
  readonly successor: { readonly id: string; readonly number: string; readonly known: boolean } | null;
}

/** What recording a notice would write. */
export interface NoticePlan {
  readonly parts: readonly PlannedPart[];
  /** Entries of the list that take no part. */
  readonly empty: readonly string[];
  /** Parts whose successor is not on record. */
  readonly withoutSuccessor: readonly string[];
  readonly orderByOn: IsoDate | null;
  /** The records it rests on; another value means they changed. */
  readonly basis: string;
}

interface FactRow {
  readonly id: string;
  readonly partId: string | null;
  readonly familyId: string | null;
  readonly noticeOn: string | null;
  readonly lastOrderOn: string | null;
  readonly lastShipOn: string | null;
  readonly repairUntilOn: string | null;
  readonly orderByOn: string | null;
  readonly source: string;
  readonly checkedOn: string;
  readonly recordedOn: string;
}

/** Every part with what else it is called, by maker and number. */
export async function loadNamedParts(tx: Transaction): Promise<(MadePart & { familyId: string | null })[]> {
  const parts = await tx.part.findMany({
    where: { mergedIntoId: null },
    select: {
      ...{ id: true, maker: true, number: true, familyId: true },
      family: { select: { name: true } },
      aliases: { select: { alias: true } },
    },
    orderBy: [{ maker: "asc" }, { number: "asc" }],
  });
  return parts.map(({ family, aliases, ...part }) => ({
    ...part,
    family: family?.name ?? null,
    aliases: aliases.map(({ alias }) => alias),
  }));
}

/** The statements in force on a day, of each part and of each family. */
async function loadFacts(tx: Transaction, today: IsoDate): Promise<Map<string, DatedFact>> {
  const rows = await tx.$queryRaw<FactRow[]>`
    SELECT DISTINCT ON ("partId", "familyId") "id"::text AS "id", "partId"::text AS "partId",
      "familyId"::text AS "familyId", "noticeOn"::text AS "noticeOn", "lastOrderOn"::text AS "lastOrderOn",
      "lastShipOn"::text AS "lastShipOn", "repairUntilOn"::text AS "repairUntilOn",
      "orderByOn"::text AS "orderByOn", "source", "checkedOn"::text AS "checkedOn",
      "recordedOn"::text AS "recordedOn"
    FROM "LifecycleFact" WHERE "recordedOn" <= ${today}::date
    ORDER BY "partId", "familyId", "recordedOn" DESC, "checkedOn" DESC, "id" DESC`;
  return new Map(
    rows.flatMap(({ partId, familyId, ...fact }) => [[partId ?? familyId ?? "", fact] as const]),
  );
}

async function loadKnown(tx: Transaction, today: IsoDate): Promise<KnownPart[]> {
  const [parts, facts] = [await loadNamedParts(tx), await loadFacts(tx, today)];
  return parts.map((part) => ({
    ...part,
    ownFact: facts.get(part.id) ?? null,
    familyFact: facts.get(part.familyId ?? "") ?? null,
  }));
}

/** What a notice would write, or why it cannot be. */
export async function planNotice(
  tx: Transaction,
  fields: NoticeFields,
  today: IsoDate,
): Promise<Result<NoticePlan, Readonly<Record<string, string>>>> {
  if (fields.checkedOn > today) return err({ checkedOn: "The day it was read cannot lie ahead." });
  const patterns = readPatterns(fields.patterns);
  if (!patterns.ok) return err({ patterns: patterns.error });
  const known = await loadKnown(tx, today);
  const made = known.filter(({ maker }) => fields.maker === "" || maker === fields.maker);
  const matched = matchParts(patterns.value, made);
  if (matched.parts.length === 0) return err({ patterns: "No part on record fits this." });
  const ids = new Set(matched.parts.map(({ id }) => id));
  const hit = made.filter(({ id }) => ids.has(id));
  const late = hit.find((part) => isOutdone(part, fields.checkedOn, today));
  if (late)
    return err({
      checkedOn: `${late.number} has a statement of today that was read on a later day already.`,
    });
  const successors = successorsOf(hit, patterns.value, { known, written: fields.successor });
  const orderByOn = fields.lastOrderOn === null ? null : orderBy(fields.lastOrderOn, cycleOf(fields));
  const stored = await tx.successor.findMany({ select: { partId: true, successorId: true } });
  const loop = loopOf(stored, successors);
  if (loop) return err({ successor: `${known.find(({ id }) => id === loop)?.number} would follow itself.` });
  const parts = hit.map((part) => planPart(part, { fields, orderByOn, hit, known, stored, successors }));
  const clash = clashIn(parts);
  if (clash) return err(clash);
  return ok({
    ...{ parts, orderByOn, empty: matched.empty, basis: basisOf(hit, successors) },
    withoutSuccessor:
      fields.successor === "" ? [] : hit.flatMap(({ id, number }) => (successors.has(id) ? [] : [number])),
  });
}

/** A part of which two days cannot both hold, one of them perhaps from the statement before. */
function clashIn(parts: readonly PlannedPart[]): Readonly<Record<string, string>> | null {
  for (const { part, after, source } of parts) {
    const clash = clashOf(after);
    if (clash) return { [clash.field]: `${clash.sentence} ${part.number} would have: ${source}.` };
  }
  return null;
}

const cycleOf = ({ quoteWeeks, approvalWeeks, purchaseWeeks }: NoticeFields) => ({
  quoteWeeks,
  approvalWeeks,
  purchaseWeeks,
});

/** Of two statements of one day the one read later holds. */
function isOutdone({ ownFact, familyFact }: KnownPart, checkedOn: IsoDate, today: IsoDate): boolean {
  const held = ownFact ?? familyFact;
  return held !== null && held.recordedOn === today && held.checkedOn > checkedOn;
}

interface Around {
  readonly fields: NoticeFields;
  readonly orderByOn: IsoDate | null;
  readonly hit: readonly KnownPart[];
  readonly known: readonly KnownPart[];
  readonly stored: readonly Step[];
  readonly successors: ReadonlyMap<string, KnownPart>;
}

function planPart(part: KnownPart, around: Around): PlannedPart {
  const { fields, orderByOn, hit, known, stored, successors } = around;
  const family = known.filter(({ familyId }) => familyId !== null && familyId === part.familyId);
  const byFamily = part.ownFact === null && family.length > 0 && family.every((one) => hit.includes(one));
  const before = part.ownFact ?? part.familyFact;
  const { dates, source } = mergeNoticeDates(before, { ...fields, orderByOn });
  const next = successors.get(part.id);
  return {
    ...{ part, before, byFamily, source },
    after: dates,
    successor: next
      ? {
          ...{ id: next.id, number: next.number },
          known: stored.some((one) => one.partId === part.id && one.successorId === next.id),
        }
      : null,
  };
}

interface Step {
  readonly partId: string;
  readonly successorId: string;
}

function successorsOf(
  hit: readonly KnownPart[],
  patterns: readonly PartPattern[],
  { known, written }: { readonly known: readonly KnownPart[]; readonly written: string },
): Map<string, KnownPart> {
  const byKey = new Map(known.map((part) => [partKey(part.number), part]));
  const pairs = hit.flatMap((part) => {
    const key = written === "" ? null : successorKey(part.number, patterns, written);
    const next = key === null ? undefined : byKey.get(key);
    return next ? [[part.id, next] as const] : [];
  });
  return new Map(pairs);
}

function loopOf(stored: readonly Step[], successors: ReadonlyMap<string, KnownPart>): string | null {
  const steps = [...successors].map(([partId, { id }], i) => ({ partId, successorId: id, rowNumber: i }));
  const loops = findSuccessorLoops([...stored.map((step) => ({ ...step, rowNumber: null })), ...steps]);
  return loops[0]?.partIds[0] ?? null;
}

function basisOf(hit: readonly KnownPart[], successors: ReadonlyMap<string, KnownPart>): string {
  const seen = hit.map(({ id, ownFact, familyFact }) => [
    ...[id, ownFact?.id ?? "", familyFact?.id ?? "", successors.get(id)?.id ?? ""],
  ]);
  return createHash("sha256").update(JSON.stringify(seen)).digest("hex");
}
