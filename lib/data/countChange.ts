import "server-only";
import { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites, sites } from "@/lib/data/scope";
import { type FoundPart, partByPlate } from "@/lib/data/stock/partByPlate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type {
  AddCountLine,
  CountEntry,
  DropCountLine,
  OneCount,
  OpenCount,
  SetCountLine,
} from "@/lib/schema/count";

const noSite: Refusal = { code: "missing", reason: "There is no such site where you may open a count." };
const missing: Refusal = { code: "missing", reason: "There is no such line of a count you may write." };
const posted: Refusal = {
  code: "impossible",
  reason: "The count is posted. Take it back before anything on it is changed.",
};
const nothing: Refusal = {
  code: "impossible",
  reason:
    "No stock is recorded in these bins. Leave the beginning of the bins empty to count the whole store.",
  fields: { bins: "No recorded bin begins so." },
};

const dateOf = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));

/** Opens a count: a sheet with a line for every lot of the bins, as the book stands now. */
export async function openStockCount(
  actor: Actor,
  { siteId, bins, blind, limitEuro }: OpenCount,
): Promise<Result<{ countId: string }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const site = await tx.site.findFirst({
      where: { AND: [{ id: siteId }, sites(actor, "stock:write")] },
      select: { id: true },
    });
    if (!site) return err(noSite);
    // Two people opening a count at once come one after the other, so that each gets a number of its own.
    await tx.$queryRaw`SELECT "id" FROM "Site" WHERE "id" = ${siteId}::uuid FOR UPDATE`;
    const lots = await tx.stockLot.findMany({
      where: { siteId, bin: { startsWith: bins, mode: "insensitive" } },
    });
    if (lots.length === 0) return err(nothing);
    const number = 1 + (await tx.stockCount.count({ where: { siteId } }));
    const made = await tx.stockCount.create({
      data: {
        ...{ siteId, bins, blind, limitEuro: limitEuro ?? 0, openedBy: actor.name },
        reference: `Count ${number}`,
        openedOn: new Date(`${today}T00:00:00Z`),
        lines: {
          create: lots.map(({ id: lotId, partId, bin, revision, state, quantity, lastPoweredOn }) => ({
            ...{ lotId, partId, bin, revision, bookState: state },
            ...{ bookQuantity: quantity, bookPoweredOn: lastPoweredOn },
          })),
        },
      },
    });
    record({
      ...{ deed: "count:open", entity: "StockCount", entityId: made.id, siteId },
      after: { bins, blind, limitEuro, lines: lots.length },
    });
    return ok({ countId: made.id });
  });
}

function columns({ lastPoweredOn, ...entry }: CountEntry) {
  return { ...entry, lastPoweredOn: dateOf(lastPoweredOn) };
}

/** Writes one line, if nobody else did since the person saw it; the book is taken as it stands now. */
export async function writeCountLine(
  actor: Actor,
  { countId, lineId, version, entry }: SetCountLine,
): Promise<Result<{ version: number }, Refusal>> {
  return change(actor, async (tx, record) => {
    const count = await holdCount(tx, actor, countId);
    if (!count.ok) return count;
    const line = await tx.countLine.findFirst({ where: { id: lineId, countId }, include: { lot: true } });
    if (!line) return err(missing);
    if (line.version !== version) return err(writtenBy(line.countedBy));
    const { lot } = line;
    // Without a record any more the pieces are a find.
    const book = {
      bookState: lot?.state ?? null,
      bookQuantity: lot?.quantity ?? null,
      bookPoweredOn: lot?.lastPoweredOn ?? null,
    };
    const after = await tx.countLine.update({
      where: { id: lineId },
      data: {
        ...{ ...columns(entry), ...book, countedBy: actor.name, countedById: actor.userId },
        version: { increment: 1 },
      },
    });
    await withdrawApproval(tx, countId);
    record({
      ...{ deed: "count:line", entity: "CountLine", entityId: lineId, siteId: count.value.siteId },
      ...{ before: { found: line.found, state: line.state, countedBy: line.countedBy }, after: { ...entry } },
    });
    return ok({ version: after.version });
  });
}

function writtenBy(name: string): Refusal {
  return {
    code: "conflict",
    reason: `${name === "" ? "Somebody else" : name} wrote this line meanwhile. What you typed is kept on this device: choose which is to stand.`,
  };
}

/** Adds pieces found that no line of the sheet names; a plate nobody knows stays on the sheet without a part. */
export async function addFoundPieces(
  actor: Actor,
  { countId, plate, bin, revision, entry }: AddCountLine,
): Promise<Result<{ lineId: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    const count = await holdCount(tx, actor, countId);
    if (!count.ok) return count;
    const { siteId } = count.value;
    const part = await partByPlate(tx, plate, siteId);
    const twice = part && (await lineOf(tx, countId, { part, bin, revision, entry }));
    if (twice) return err(twice);
    const made = await tx.countLine.create({
      data: {
        ...{ countId, plate, bin, revision, partId: part?.id ?? null, ...columns(entry) },
        ...{ countedBy: actor.name, countedById: actor.userId },
      },
    });
    await withdrawApproval(tx, countId);
    record({
      ...{ deed: "count:find", entity: "CountLine", entityId: made.id, siteId },
      after: { plate, bin, revision, part: part?.number ?? null, ...entry },
    });
    return ok({ lineId: made.id });
  });
}

interface Find extends Pick<AddCountLine, "bin" | "revision" | "entry"> {
  readonly part: FoundPart;
}

/** Refuses a find the sheet has a line for: it would be booked twice. */
async function lineOf(tx: Transaction, countId: string, { part, bin, revision, entry }: Find) {
  const same = await tx.countLine.findFirst({
    where: {
      ...{ countId, partId: part.id, bin, revision },
      OR: [{ bookState: entry.state }, { bookState: null, state: entry.state }],
    },
    select: { id: true },
  });
  if (!same) return null;
  return {
    code: "impossible",
    reason: `The sheet has a line for ${part.number} of this revision and condition in bin ${bin}. Write the pieces there.`,
    fields: { plate: "Already on the sheet." },
  } satisfies Refusal;
}

/** Takes a find off the sheet. */
export async function dropFoundPieces(
  actor: Actor,
  { countId, lineId, version }: DropCountLine,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const count = await holdCount(tx, actor, countId);
    if (!count.ok) return count;
    const line = await tx.countLine.findFirst({ where: { id: lineId, countId, bookState: null } });
    if (!line) return err(missing);
    if (line.version !== version) return err(writtenBy(line.countedBy));
    await tx.countLine.delete({ where: { id: lineId } });
    await withdrawApproval(tx, countId);
    record({
      ...{ deed: "count:drop", entity: "CountLine", entityId: lineId, siteId: count.value.siteId },
      before: { plate: line.plate, bin: line.bin, found: line.found },
    });
    return ok(null);
  });
}

/** Gives a count up that nobody has written on. */
export async function dropStockCount(actor: Actor, { countId }: OneCount): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const count = await tx.stockCount.findFirst({
      where: { id: countId, ...atSites(actor, "stock:write") },
      include: { lines: { where: { found: { not: null } }, select: { id: true } } },
    });
    if (!count) return err(missing);
    if (count.postedOn !== null) return err(posted);
    if (count.lines.length > 0)
      return err({ code: "impossible", reason: "Lines of this count are written; it is not thrown away." });
    await tx.stockCount.delete({ where: { id: countId } });
    const { siteId, reference, bins } = count;
    record({
      ...{ deed: "count:give-up", entity: "StockCount", entityId: countId, siteId },
      before: { reference, bins },
    });
    return ok(null);
  });
}

/** What was approved is no longer what stands. */
async function withdrawApproval(tx: Transaction, countId: string): Promise<void> {
  await tx.stockCount.update({ where: { id: countId }, data: { approvedOn: null, approvedBy: null } });
}

/** A count that may be written on, held so that writing and posting come one after the other. */
async function holdCount(
  tx: Transaction,
  actor: Actor,
  countId: string,
): Promise<Result<{ siteId: string }, Refusal>> {
  if (!z.uuid().safeParse(countId).success) return err(missing);
  await tx.$queryRaw`SELECT "id" FROM "StockCount" WHERE "id" = ${countId}::uuid FOR UPDATE`;
  const count = await tx.stockCount.findFirst({
    where: { id: countId, ...atSites(actor, "event:write") },
    select: { siteId: true, postedOn: true },
  });
  if (!count) return err(missing);
  return count.postedOn === null ? ok({ siteId: count.siteId }) : err(posted);
}
