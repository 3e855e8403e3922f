import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { readHoldings } from "@/lib/data/sparesHoldings";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type PurchaseCycle, USUAL_CYCLE } from "@/lib/lifecycle/orderBy";
import type { ListedNotice } from "@/lib/view/noticeList";
import type { Prisma } from "@/prisma/generated/client";

const WITH_PARTS = {
  parts: {
    orderBy: { part: { number: "asc" } },
    select: {
      part: { select: { id: true, number: true, family: { select: { id: true, name: true } } } },
    },
  },
  decisions: {
    where: { supersededById: null },
    select: { id: true, familyId: true, decidedOn: true },
  },
} satisfies Prisma.NoticeInclude;

type Row = Omit<Prisma.NoticeGetPayload<{ include: typeof WITH_PARTS }>, "fileBytes">;

/** The notices known on a day, with the units they touch at the actor's sites; in no order. */
export async function readNotices(actor: Actor, asOf: IsoDate): Promise<ListedNotice[]> {
  if (!maySomewhere(actor.grants, "read")) return [];
  const [rows, holdings] = await Promise.all([
    database().notice.findMany({
      where: { recordedOn: { lte: new Date(`${asOf}T00:00:00Z`) } },
      omit: { fileBytes: true },
      include: WITH_PARTS,
    }),
    readHoldings(actor, asOf),
  ]);
  const units = new Map<string, number>();
  for (const { partId, units: here } of holdings) units.set(partId, (units.get(partId) ?? 0) + here);
  return rows.map((row) => listed(row, units, asOf));
}

function listed(row: Row, units: ReadonlyMap<string, number>, asOf: IsoDate): ListedNotice {
  const families = new Map(
    row.parts.flatMap(({ part }) => (part.family ? [[part.family.id, part.family.name]] : [])),
  );
  const { id, maker, document, evidence } = row;
  return {
    ...{ id, maker, document, evidence, takenBack: row.takenBackAt !== null },
    ...{
      noticeOn: dayOf(row.noticeOn),
      lastOrderOn: dayOf(row.lastOrderOn),
      lastShipOn: dayOf(row.lastShipOn),
    },
    ...{ repairUntilOn: dayOf(row.repairUntilOn), orderByOn: dayOf(row.orderByOn) },
    recordedOn: row.recordedOn.toISOString().slice(0, 10),
    parts: row.parts.map(({ part }) => ({ id: part.id, number: part.number })),
    families: [...families].map(([familyId = "", name = ""]) => ({
      ...{ id: familyId, name },
      decisionId:
        row.decisions.find(
          (one) => one.familyId === familyId && one.decidedOn.toISOString().slice(0, 10) <= asOf,
        )?.id ?? null,
    })),
    units: row.parts.reduce((sum, { part }) => sum + (units.get(part.id) ?? 0), 0),
  };
}

/** A notice with what was typed for it and where it came from. */
export interface NoticeFile extends ListedNotice {
  readonly patterns: string;
  readonly successor: string;
  readonly note: string;
  readonly checkedOn: IsoDate;
  readonly recordedBy: string;
  readonly takenBackBy: string | null;
  readonly cycle: PurchaseCycle;
  readonly file: { readonly name: string; readonly hash: string } | null;
}

/** One notice; null when there is none to read. */
export async function readNotice(
  actor: Actor,
  { noticeId, asOf }: { readonly noticeId: string; readonly asOf: IsoDate },
): Promise<NoticeFile | null> {
  if (!z.uuid().safeParse(noticeId).success) return null;
  const found = (await readNotices(actor, asOf)).find(({ id }) => id === noticeId);
  const row =
    found && (await database().notice.findUnique({ where: { id: noticeId }, omit: { fileBytes: true } }));
  if (!found || !row) return null;
  const { patterns, successor, note, recordedBy, takenBackBy, fileName, fileHash } = row;
  return {
    ...{ ...found, patterns, successor, note, recordedBy, takenBackBy },
    ...{ checkedOn: row.checkedOn.toISOString().slice(0, 10), cycle: cycleOf(row) },
    file: fileHash === null ? null : { name: fileName ?? "", hash: fileHash },
  };
}

/** The bytes of a notice as it was received; null when none were kept. */
export async function readNoticeSource(actor: Actor, noticeId: string) {
  if (!z.uuid().safeParse(noticeId).success || !maySomewhere(actor.grants, "read")) return null;
  const row = await database().notice.findUnique({
    where: { id: noticeId },
    select: { fileName: true, fileBytes: true },
  });
  return row?.fileBytes ? { name: row.fileName ?? "notice", bytes: row.fileBytes } : null;
}

/** What a new notice's form starts from: the makers on record, and the weeks the last notice was given. */
export async function readNoticeStart(actor: Actor) {
  if (!maySomewhere(actor.grants, "register:import")) return null;
  const [last, families, makers] = await Promise.all([
    database().notice.findFirst({ orderBy: { id: "desc" }, omit: { fileBytes: true } }),
    database().family.findMany({ select: { name: true }, orderBy: { name: "asc" } }),
    database().part.findMany({ select: { maker: true }, distinct: ["maker"], orderBy: { maker: "asc" } }),
  ]);
  return {
    cycle: last ? cycleOf(last) : USUAL_CYCLE,
    families: families.map(({ name }) => name),
    makers: makers.map(({ maker }) => maker).filter((maker) => maker !== ""),
  };
}

type Weeks = Pick<Row, "quoteWeeks" | "approvalWeeks" | "purchaseWeeks">;

const cycleOf = ({ quoteWeeks, approvalWeeks, purchaseWeeks }: Weeks): PurchaseCycle => ({
  ...{ quoteWeeks: quoteWeeks.toNumber(), approvalWeeks: approvalWeeks.toNumber() },
  purchaseWeeks: purchaseWeeks.toNumber(),
});

const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
