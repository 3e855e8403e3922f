import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { usualCare } from "@/lib/risk/careIntervals";
import type { ItemClass } from "@/lib/risk/evaluation";
import { careDue } from "@/lib/spares/careDue";
import {
  byUrgency,
  type CareLot,
  type ClassCare,
  type GivenCare,
  type HeldPieces,
} from "@/lib/view/storageCare";

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;

/** Pieces that nobody will fit need no care. */
const PAST_CARE = "beyond_repair";
const MOST_GIVEN = 100;

/** How often each class needs care, by the own list or as somebody set it, and whether the actor may set it. */
export async function readClassCare(
  actor: Actor,
): Promise<{ readonly classes: ClassCare[]; readonly mayChange: boolean }> {
  const set = new Map((await database().careInterval.findMany()).map((row) => [row.itemClass, row]));
  const classes = (Object.keys(usualCare) as ItemClass[]).map((itemClass): ClassCare => {
    const row = set.get(itemClass);
    if (!row) return { itemClass, ...usualCare[itemClass], changedBy: null, changedOn: null };
    const { kind, everyMonths, changedBy, changedOn } = row;
    return { itemClass, kind, everyMonths, changedBy, changedOn: dayOf(changedOn) };
  });
  return { classes, mayChange: scopeOf(actor.grants, "stock:write") === "all" };
}

/** Every lot of the actor's sites whose pieces need care, the most urgent first. Stock has no past. */
export async function readCareLots(actor: Actor, asOf: IsoDate): Promise<CareLot[]> {
  const { classes } = await readClassCare(actor);
  const needed = new Map(classes.map((one) => [one.itemClass, one]));
  const [lots, batteries] = await Promise.all([findLots(actor, needed), lastBatteries(actor, asOf)]);
  return byUrgency(
    lots.flatMap((lot): CareLot[] => {
      const { itemClass, number: part } = lot.part;
      const { kind, everyMonths } = needed.get(itemClass) ?? { kind: "power_up", everyMonths: null };
      if (everyMonths === null) return [];
      const lastPoweredOn = dayOf(lot.lastPoweredOn);
      const lastOn = kind === "battery" ? (batteries.get(lot.id) ?? null) : lastPoweredOn;
      const { dueOn, state: care } = careDue(lastOn, everyMonths, asOf);
      const { id: lotId, bin, partId, revision, state, quantity } = lot;
      return [
        {
          ...{ lotId, bin, partId, part, revision, itemClass, state, quantity, lastPoweredOn },
          ...{ kind, everyMonths, lastOn, dueOn, care, siteCode: lot.site.code },
          mayChange: mayAt(actor.grants, "stock:write", lot.siteId),
        },
      ];
    }),
  );
}

function findLots(actor: Actor, needed: ReadonlyMap<ItemClass, ClassCare>) {
  const classes = [...needed.values()].flatMap(({ itemClass, everyMonths }) =>
    everyMonths === null ? [] : itemClass,
  );
  return database().stockLot.findMany({
    where: {
      ...{ ...atSites(actor, "read"), state: { not: PAST_CARE }, part: { itemClass: { in: classes } } },
      OR: [{ quantity: null }, { quantity: { gt: 0 } }],
    },
    include: { site: { select: { code: true } }, part: { select: { number: true, itemClass: true } } },
  });
}

async function lastBatteries(actor: Actor, asOf: IsoDate): Promise<Map<string, IsoDate>> {
  const rows = await database().storageCare.groupBy({
    by: ["lotId"],
    where: { ...atSites(actor, "read"), kind: "battery", doneOn: { lte: new Date(`${asOf}T00:00:00Z`) } },
    _max: { doneOn: true },
  });
  return new Map(
    rows.flatMap(({ lotId, _max }): [string, IsoDate][] => {
      const on = dayOf(_max.doneOn);
      return lotId === null || on === null ? [] : [[lotId, on]];
    }),
  );
}

/** The care recorded last at the actor's sites. */
export async function readGivenCare(actor: Actor): Promise<GivenCare[]> {
  const rows = await database().storageCare.findMany({
    where: atSites(actor, "read"),
    include: {
      site: { select: { code: true } },
      part: { select: { number: true } },
      lot: { select: { bin: true } },
    },
    orderBy: [{ doneOn: "desc" }, { id: "desc" }],
    take: MOST_GIVEN,
  });
  return rows.map(({ id, kind, doneBy, pieces, failed, note, ...row }) => ({
    ...{ id, kind, doneBy, pieces, failed, note },
    ...{ siteCode: row.site.code, part: row.part.number, bin: row.lot?.bin ?? "" },
    doneOn: row.doneOn.toISOString().slice(0, 10),
    mayChange: mayAt(actor.grants, "stock:write", row.siteId),
  }));
}

/** Pieces on hold at the actor's sites, the oldest hold first; lots put on hold without a record say so. */
export async function readHeldPieces(actor: Actor): Promise<HeldPieces[]> {
  const lots = await database().stockLot.findMany({
    where: {
      ...{ ...atSites(actor, "read"), state: "on_hold" },
      OR: [{ quantity: null }, { quantity: { gt: 0 } }],
    },
    include: {
      site: { select: { code: true } },
      part: { select: { number: true } },
      holds: { where: { releasedOn: null }, orderBy: { heldOn: "asc" } },
    },
    orderBy: [{ site: { code: "asc" } }, { bin: "asc" }],
  });
  const held = lots.flatMap(({ holds, ...lot }): HeldPieces[] => {
    const at = { siteCode: lot.site.code, partId: lot.partId, part: lot.part.number, bin: lot.bin };
    const recorded = holds.map(({ id, pieces, reason, heldBy, heldOn }) => ({
      ...{ ...at, id, pieces, reason, heldBy, heldOn: dayOf(heldOn) },
    }));
    const rest =
      lot.quantity === null ? null : lot.quantity - holds.reduce((sum, { pieces }) => sum + pieces, 0);
    if (rest !== null && rest <= 0) return recorded;
    return [...recorded, { ...at, id: lot.id, pieces: rest, reason: lot.note, heldBy: null, heldOn: null }];
  });
  return held.sort((a, b) => ((a.heldOn ?? "") < (b.heldOn ?? "") ? -1 : 1));
}
