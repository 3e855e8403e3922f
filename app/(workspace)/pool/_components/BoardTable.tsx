"use client";

import { useMemo } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EmptyState } from "@/app/_ui/EmptyState";
import { StageBadge } from "@/app/_ui/StageBadge";
import { ShareBars } from "@/app/(workspace)/pool/_components/ShareBars";
import { percent } from "@/lib/view/chance";
import { exactMoney } from "@/lib/view/format";
import { NOT_KNOWN, plainNumber, quantity, significant } from "@/lib/view/number";
import { type BoardPool, highestIndex, usableShares } from "@/lib/view/poolBoard";
import type { HeldShare } from "@/lib/view/sparesShares";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

/** Pools with what is under way between shelves. */
export type BoardRow = BoardPool & { readonly underWay: number };

function shareAt(pool: BoardPool, siteCode: string): HeldShare | undefined {
  return usableShares([pool]).find((share) => share.siteCode === siteCode);
}

function shareWords({ siteCode, usable, units, ofSpares, ofDemand }: HeldShare): string {
  return `${siteCode}: ${quantity(usable)} usable, ${percent(ofSpares)} of the pieces; ${plainNumber(units)} units, ${percent(ofDemand)} of the demand`;
}

function SiteShare({ pool, siteCode }: { readonly pool: BoardPool; readonly siteCode: string }) {
  const share = shareAt(pool, siteCode);
  if (share === undefined) return null;
  const index = share.index === null ? (share.hoards ? "no demand" : "") : significant(share.index, 2);
  return (
    <span className="block">
      <ShareBars {...share} text={shareWords(share)} />
      <span className="flex justify-between gap-2 text-sm">
        <span>
          {quantity(share.usable)}
          <span className="text-ink-2">/{plainNumber(share.units)}</span>
        </span>
        <span className={share.hoards ? "font-semibold" : "text-ink-2"}>
          {share.hoards ? "H " : ""}
          {index}
        </span>
      </span>
    </span>
  );
}

const siteColumn = (siteCode: string): Column<BoardRow> => ({
  ...{
    key: siteCode.toLowerCase(),
    header: siteCode,
    unit: "usable/units, index",
    width: "6.5rem",
    priority: 3,
  },
  value: (pool) => shareAt(pool, siteCode)?.index ?? null,
  cell: (pool) => <SiteShare pool={pool} siteCode={siteCode} />,
});

function Price({ pool }: { readonly pool: BoardRow }) {
  if (pool.price === null) return <>{NOT_KNOWN}</>;
  const { amount, currency, pricedOn } = pool.price;
  return (
    <>
      <span className="whitespace-nowrap">{exactMoney(amount, currency)}</span>
      <span className="block text-ink-2 text-sm">{pricedOn === null ? "day not known" : day(pricedOn)}</span>
    </>
  );
}

const who: readonly Column<BoardRow>[] = [
  {
    ...{ key: "part", header: "Part", filter: "text", width: "8.5rem" },
    value: (pool) => pool.number,
    word: (pool) => `${pool.number} ${pool.number.replace(/[^\p{L}\p{N}]/gu, "")}`,
    cell: (pool) => pool.number,
  },
  {
    ...{ key: "family", header: "Family", filter: "choice", priority: 3 },
    value: (pool) => pool.family?.name ?? "no family",
  },
  {
    ...{ key: "stage", header: "Supply stage", filter: "choice", priority: 3 },
    value: (pool) => stageOrder(pool.stage),
    word: (pool) => stageView(pool.stage).name,
    cell: (pool) => <StageBadge {...stageBadge(pool.stage)} />,
  },
  {
    ...{ key: "index", header: "Highest index", unit: "pieces ÷ demand", align: "end", priority: 1 },
    value: highestIndex,
    cell: (pool) => {
      const index = highestIndex(pool);
      return index === null ? "none" : Number.isFinite(index) ? significant(index, 2) : "no demand";
    },
  },
  {
    ...{ key: "usable", header: "Usable", unit: "of book", align: "end", priority: 1 },
    value: (pool) => pool.usable,
    cell: (pool) =>
      pool.book === null ? "not counted" : `${quantity(pool.usable)} of ${plainNumber(pool.book)}`,
  },
];

const UNDER_WAY: Column<BoardRow> = {
  ...{ key: "way", header: "Under way", unit: "pieces, on no shelf", align: "end", priority: 3 },
  value: (pool) => pool.underWay,
  cell: (pool) => plainNumber(pool.underWay),
};

const PRICE: Column<BoardRow> = {
  ...{ key: "price", header: "Price", unit: "one piece", align: "end", priority: 3 },
  value: (pool) => pool.priceEuro,
  cell: (pool) => <Price pool={pool} />,
};

interface BoardTableProps {
  readonly pools: readonly BoardRow[];
  readonly siteCodes: readonly string[];
  readonly showsPrices: boolean;
}

/** Every pool, site by site: what it holds against what it needs. */
export function BoardTable({ pools, siteCodes, showsPrices }: BoardTableProps) {
  const columns = useMemo(
    () => [...who, ...siteCodes.map(siteColumn), UNDER_WAY, ...(showsPrices ? [PRICE] : [])],
    [siteCodes, showsPrices],
  );
  return (
    <DataTable
      id="pool-board"
      caption="Pools by site, the most pieces beyond a share first"
      noun="pools"
      rows={pools}
      columns={columns}
      rowKey={(pool) => pool.partId}
      rowHref={(pool) => `/pool/${pool.partId}`}
      empty={
        <EmptyState title="No pools yet">
          A pool stands here once a part is installed or on a shelf. Import an axis or stock register.
        </EmptyState>
      }
    />
  );
}
