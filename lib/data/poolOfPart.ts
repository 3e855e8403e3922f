import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { mayAt, maySomewhere, seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { loadSeenGroup, type SeenGroup, type StoredPool } from "@/lib/data/group/loadSeenGroup";
import { readLineFacts } from "@/lib/data/lineCompatibility";
import { readRulesInForce } from "@/lib/data/rules";
import { siteIds, sites } from "@/lib/data/scope";
import { toldPrice } from "@/lib/data/stock/partPrice";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { poolSites } from "@/lib/risk/poolSites";
import { ownShelfOf, wayLoss } from "@/lib/risk/siteShelves";
import { storageRules } from "@/lib/risk/storageRules";
import { worksInState } from "@/lib/spares/usableCount";
import { type PoolLot, poolMoves, type SiteOfPool } from "@/lib/view/poolFindings";
import { type PoolOfPart, poolWithoutAmounts, TRANSFER_DEFAULTS } from "@/lib/view/poolMoves";

interface Asked {
  readonly id: string;
  readonly asOf: IsoDate;
  readonly target: number;
  readonly least: number;
}

/**
 * Who holds what of a part and which pieces would save most elsewhere, among the actor's sites; null without a pool.
 * Without amounts where not all are shown to the actor, and then with the usual least saving: another would tell it.
 */
export async function readPoolOfPart(actor: Actor, asked: Asked): Promise<PoolOfPart | null> {
  if (seesAmounts(actor.grants)) return readWhole(actor, asked);
  const pool = await readWhole(actor, { ...asked, least: TRANSFER_DEFAULTS.least });
  return pool && poolWithoutAmounts(pool);
}

async function readWhole(actor: Actor, { id, asOf, ...terms }: Asked): Promise<PoolOfPart | null> {
  if (!z.uuid().safeParse(id).success || !maySomewhere(actor.grants, "read")) return null;
  const [group, part, places, lots, rules, facts] = await Promise.all([
    loadSeenGroup(asOf, [id]),
    database().part.findUnique({ where: { id }, include: { family: { select: { name: true } } } }),
    database().site.findMany({ where: sites(actor, "read"), orderBy: { code: "asc" } }),
    findLots(actor, id),
    readRulesInForce(actor),
    readLineFacts(actor, { asOf }),
  ]);
  const [pool] = group.pools;
  if (!part || !pool) return null;
  const found = sitesOf(group, pool).flatMap((own): SiteOfPool[] => {
    const place = places.find((one) => one.id === own.shelf.id);
    if (!place) return [];
    const { code, name, country, currency } = place;
    const controllers = facts.filter(({ siteCode }) => siteCode === code).flatMap((line) => line.controllers);
    const mayWrite = mayAt(actor.grants, "stock:write", place.id);
    return [{ ...own, code, name, country, currency, controllers, mayWrite }];
  });
  found.sort((a, b) => (a.code < b.code ? -1 : 1));
  const { figures } = pool;
  const { installed, usable, book, stage, noSpare, removal } = figures;
  return {
    ...{ asOf, partId: id, number: part.number, maker: part.maker, description: part.description },
    ...{ itemClass: part.itemClass, stage, installed, usable, book, price: toldPrice(part) },
    ...{ groupNoSpare: noSpare.mean, transferHours: group.mark.assumptions.transferHours, ...terms },
    everySite: siteIds(actor, "read") === undefined,
    ...poolMoves(
      { sites: found, lots: lotsOf(lots, pool, group), family: part.family?.name ?? null, rules },
      { ...terms, installed, usable, removalRate: removal.mean },
    ),
  };
}

function sitesOf({ byPool, mark }: SeenGroup, pool: StoredPool) {
  const months = mark.assumptions.horizonMonths;
  return poolSites(pool, byPool).map((site) => ({
    shelf: ownShelfOf(site, pool, { noSpareByMonth: pool.noSpareByMonth, months }),
    units: site.units,
    stops: site.lines.reduce((sum, { stops }) => sum + stops, 0),
    wayLoss: wayLoss(site),
  }));
}

type Found = Awaited<ReturnType<typeof findLots>>;

function findLots(actor: Actor, partId: string) {
  const ids = siteIds(actor, "read");
  return database().stockLot.findMany({
    where: { partId, quantity: { gt: 0 }, ...(ids ? { siteId: ids } : {}) },
    orderBy: [{ siteId: "asc" }, { bin: "asc" }, { revision: "asc" }, { state: "asc" }],
    include: {
      transfersTaken: {
        where: { state: { in: ["proposed", "agreed", "sent"] } },
        select: { toSiteId: true, pieces: true, state: true },
      },
    },
  });
}

/** The lots as they will be once what was asked for has come: those pieces are promised and go nowhere else. */
function lotsOf(rows: Found, { pool }: StoredPool, { mark }: SeenGroup): PoolLot[] {
  const rules = storageRules(pool.itemClass, mark.asOf, mark.assumptions);
  return rows.flatMap(({ transfersTaken, ...row }) => {
    const { id, siteId, bin, revision, state } = row;
    const lastPoweredOn = row.lastPoweredOn?.toISOString().slice(0, 10) ?? null;
    const works = worksInState({ siteId, state, quantity: row.quantity, lastPoweredOn }, rules);
    const lot = { id, siteId, bin, revision, state, works };
    const leaving = transfersTaken.filter((one) => one.state !== "sent");
    const promised = leaving.reduce((sum, { pieces }) => sum + pieces, 0);
    return [
      { ...lot, pieces: Math.max(0, (row.quantity ?? 0) - promised), promised: false },
      ...transfersTaken.map(({ toSiteId, pieces }, i) => ({
        ...{ ...lot, id: `${id}/${i}`, siteId: toSiteId, pieces, promised: true },
      })),
    ];
  });
}
