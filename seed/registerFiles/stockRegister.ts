import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import type { SiteView } from "@/seed/registerFiles/siteView";

/** One row a shelf, with the storeroom's own number. */
export function stockRegister({ site, tables, part }: SiteView): RegisterRow[] {
  const numbers = new Map(
    tables.PartAlias.filter(({ siteId }) => siteId === site.id).map(({ partId, alias }) => [partId, alias]),
  );
  return tables.StockLot.filter(({ siteId }) => siteId === site.id).map((lot) => ({
    siteCode: site.code,
    bin: lot.bin,
    maker: part.get(lot.partId)?.maker ?? null,
    partNumber: part.get(lot.partId)?.number ?? null,
    storeroomNumber: numbers.get(lot.partId) ?? null,
    revision: lot.revision === "" ? null : lot.revision,
    description: part.get(lot.partId)?.description ?? null,
    quantity: lot.quantity,
    state: lot.state,
    lastPoweredOn: lot.lastPoweredOn,
    countedOn: lot.countedOn,
    reservedFor: lot.reservedFor,
    note: lot.note,
  }));
}
