import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ItemClass } from "@/lib/risk/evaluation";
import { storageRules } from "@/lib/risk/storageRules";
import { type StorageRules, usableCount } from "@/lib/spares/usableCount";
import type { PartLot, SiteStock } from "@/lib/view/partDossier";

interface StockQuestion {
  readonly partId: string;
  readonly itemClass: ItemClass;
  readonly asOf: IsoDate;
}

/** The lots of a part at the actor's sites, and each site's book against usable. */
export async function readPartStock(
  actor: Actor,
  { partId, itemClass, asOf }: StockQuestion,
): Promise<{ lots: PartLot[]; stock: SiteStock[] }> {
  const [rows, { values }] = await Promise.all([findLots(actor, partId), assumptionsInUse(database())]);
  const rules = storageRules(itemClass, asOf, values);
  const lots = rows.map((row): PartLot => {
    const { id, bin, revision, state, quantity, reservedFor, note, evidence, site } = row;
    const counted = { siteId: row.siteId, state, lastPoweredOn: dayOf(row.lastPoweredOn) };
    return {
      ...{ id, bin, revision, state, quantity, reservedFor, note, evidence },
      siteCode: site.code,
      siteName: site.name,
      lastPoweredOn: dayOf(row.lastPoweredOn),
      countedOn: dayOf(row.countedOn),
      mayChange: mayAt(actor.grants, "stock:write", row.siteId),
      works: usableCount([{ ...counted, quantity: 1 }], rules).usable,
      usable: usableCount([{ ...counted, quantity }], rules).usable,
    };
  });
  return { lots, stock: stockBySite(lots, rules) };
}

function stockBySite(lots: readonly PartLot[], rules: StorageRules): SiteStock[] {
  return [...new Set(lots.map((lot) => lot.siteCode))].map((siteCode) => {
    const own = lots.filter((lot) => lot.siteCode === siteCode);
    const counted = usableCount(
      own.map(({ state, quantity, lastPoweredOn }) => ({ siteId: siteCode, state, quantity, lastPoweredOn })),
      rules,
    );
    const { book, usable, deductions } = counted;
    return { siteCode, siteName: own[0]?.siteName ?? siteCode, book, usable, deductions };
  });
}

function findLots(actor: Actor, partId: string) {
  return database().stockLot.findMany({
    where: { partId, ...atSites(actor, "read") },
    include: { site: { select: { code: true, name: true } } },
    orderBy: [{ site: { code: "asc" } }, { bin: "asc" }, { revision: "asc" }, { state: "asc" }],
  });
}

function dayOf(date: Date | null): IsoDate | null {
  return date?.toISOString().slice(0, 10) ?? null;
}
