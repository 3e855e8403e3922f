import type { IsoDate } from "@/lib/kernel/isoDate";
import type { BuyChoice } from "@/lib/schema/buyDecision";
import { apportion } from "@/lib/spares/apportion";
import { type BuyCase, type GroupBuy, neededAt } from "@/lib/spares/noticeBuy";
import type { BuyBasis, FiguresBasis } from "@/lib/view/lastBuyBasis";
import {
  BUY_TERMS,
  buyCases,
  type CaseRow,
  groupName,
  type LastBuySheet,
  lastBuySheet,
  priceOfBuy,
  slipped,
} from "@/lib/view/lastBuySheet";

/** One group that shares stock, every step of its quantity as a plain figure. */
export interface SheetGroup extends Omit<GroupBuy, "rate" | "partIds" | "siteIds"> {
  readonly name: string;
  /** The part, where the group is of one. */
  readonly partId: string | null;
  /** Removals per unit-year: mean, and shape and weight of what is believed of it. */
  readonly rate: number;
  readonly a: number;
  readonly b: number;
  /** No cost of a stop or no price is known: bought to a level. */
  readonly byLevel: boolean;
  readonly price: number | null;
}

export interface SheetCase extends Pick<BuyCase, "sharing" | "repaired" | "slipYears"> {
  readonly label: string;
  readonly quantity: number;
  readonly low: number;
  readonly high: number;
  readonly unitYears: number;
  readonly exposure: number;
  readonly demand: number;
  readonly price: number | null;
  readonly groups: readonly SheetGroup[];
}

/** Pieces for one part on one site's shelf. */
export interface ShelfRow {
  readonly partId: string;
  readonly number: string;
  readonly siteId: string;
  readonly site: string;
  readonly proposed: number;
}

/** A machine whose controller the newest hardware asks more of. */
export interface LastBatchRow {
  readonly line: string;
  readonly machines: readonly string[];
  readonly controller: string;
  readonly model: string;
  readonly level: string;
  /** False: it is not known whether it would run. */
  readonly fails: boolean;
  readonly rule: string;
}

/** A sheet with nothing left to look up: what a page shows, a file holds and a decision freezes. */
export interface BuyDocument {
  readonly asOf: IsoDate;
  readonly basis: FiguresBasis;
  readonly family: Pick<BuyBasis["family"], "id" | "maker" | "name">;
  readonly sites: readonly string[];
  readonly everySite: boolean;
  readonly choice: BuyChoice;
  readonly terms: typeof BUY_TERMS;
  readonly lastOrderOn: IsoDate | null;
  readonly orderByOn: IsoDate | null;
  readonly units: number;
  readonly plannedShare: number;
  readonly unpriced: readonly string[];
  readonly prices: readonly { readonly number: string; readonly price: number | null }[];
  /** The case chosen, then each assumption changed in turn. */
  readonly cases: readonly SheetCase[];
  readonly shelves: readonly ShelfRow[];
  readonly lastBatch: readonly LastBatchRow[];
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

/** Works a sheet out for a choice. */
export function buyDocument(
  basis: BuyBasis,
  choice: BuyChoice,
  lastBatch: readonly LastBatchRow[],
): BuyDocument {
  const { sharing, repaired, slipYears, level, planYears } = choice;
  const sheet = lastBuySheet(basis, { level, planYears });
  const asked = slipped({ sharing, repaired, slipYears: 0, horizonYears: BUY_TERMS.horizonYears }, slipYears);
  const cases = buyCases(sheet, asked);
  const { asOf, family, everySite, lastOrderOn, orderByOn, parts } = basis;
  return {
    ...{ asOf, basis: basis.basis, everySite, choice, lastOrderOn, orderByOn, lastBatch },
    family: { id: family.id, maker: family.maker, name: family.name },
    sites: Object.values(basis.sites).sort(),
    ...{ terms: BUY_TERMS, plannedShare: sheet.plannedShare, unpriced: sheet.unpriced },
    units: sum(basis.needs.flatMap(({ lines }) => lines.map((line) => line.units))),
    prices: parts.map(({ number, price }) => ({ number, price })),
    cases: cases.map((one) => sheetCase(one, basis, sheet)),
    shelves: shelvesOf(cases[0], basis, sheet),
  };
}

function sheetCase({ asked, label, buy }: CaseRow, basis: BuyBasis, sheet: LastBuySheet): SheetCase {
  const { sharing, repaired, slipYears } = asked;
  const groups = buy.groups
    .map((group) => sheetGroup(group, basis, { sheet, sharing }))
    .sort((a, b) => a.name.localeCompare(b.name, "en"));
  const { quantity, low, high } = buy;
  return {
    ...{ label, sharing, repaired, slipYears, quantity, low, high, groups },
    unitYears: sum(groups.map((group) => group.unitYears)),
    exposure: sum(groups.map((group) => group.exposure)),
    demand: sum(groups.map((group) => group.demand)),
    price: priceOfBuy(buy, basis.parts),
  };
}

function sheetGroup(
  group: GroupBuy,
  basis: BuyBasis,
  { sheet, sharing }: { readonly sheet: LastBuySheet; readonly sharing: BuyCase["sharing"] },
): SheetGroup {
  const { rate, partIds, siteIds, ...steps } = group;
  const numbers = partIds.map((id) => basis.parts.find((part) => part.id === id)?.number ?? "");
  return {
    ...steps,
    name: groupName({ partIds, siteIds }, basis, sharing),
    partId: sharing === "family" ? null : (partIds[0] ?? null),
    ...{ rate: rate.a / rate.b, a: rate.a, b: rate.b },
    byLevel: numbers.some((number) => sheet.unpriced.includes(number)),
    price: priceOfBuy({ groups: [group] }, basis.parts),
  };
}

/** Where the pieces of a case would lie: of each group by what its shelves need. */
function shelvesOf(row: CaseRow | undefined, basis: BuyBasis, { parts, rates }: LastBuySheet): ShelfRow[] {
  if (!row) return [];
  const { asked, buy } = row;
  const rows = buy.groups.flatMap((group) => {
    const own = parts.filter(
      ({ partId, siteId }) => group.partIds.includes(partId) && group.siteIds.includes(siteId),
    );
    const split = apportion(
      group.quantity,
      own.map((part) => neededAt(part, rates.parts.get(part.partId) ?? rates.family, asked)),
    );
    return own.map(({ partId, siteId }, i) => ({
      ...{ partId, siteId, proposed: split[i] ?? 0 },
      number: basis.parts.find(({ id }) => id === partId)?.number ?? "",
      site: basis.sites[siteId] ?? "",
    }));
  });
  return rows.sort((a, b) => a.number.localeCompare(b.number, "en") || a.site.localeCompare(b.site, "en"));
}

/** How many more, and for how much, if every retrofit comes one more year late; null price is not known. */
export function priceOfSlip({ cases }: Pick<BuyDocument, "cases">) {
  const [base] = cases;
  const late = cases.find(({ slipYears }) => base !== undefined && slipYears > base.slipYears);
  if (!base || !late) return null;
  return {
    units: late.quantity - base.quantity,
    price: base.price === null || late.price === null ? null : late.price - base.price,
  };
}
