"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { Delta } from "@/app/_ui/Delta";
import { EmptyState } from "@/app/_ui/EmptyState";
import { SpanBar } from "@/app/_ui/SpanBar";
import { StageBadge } from "@/app/_ui/StageBadge";
import { percent } from "@/lib/view/chance";
import { itemClassName } from "@/lib/view/linePart";
import { count, plainNumber, quantity, significant } from "@/lib/view/number";
import type { SparesPool } from "@/lib/view/sparesLook";
import { depletionDayText, moveKind, pointsText, poolMove } from "@/lib/view/sparesMoves";
import { heldShares } from "@/lib/view/sparesShares";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";

function ChanceMoved({ pool }: { readonly pool: SparesPool }) {
  const { noSpare, reasons } = poolMove(pool);
  const kind = noSpare === null ? "same" : moveKind(noSpare);
  const text = noSpare === null ? "new" : kind === "same" ? "no change" : pointsText(noSpare);
  const because = reasons.length > 0 ? reasons.join(", ") : kind === "same" ? "" : "only time passed";
  return (
    <>
      <Delta kind={kind} text={text} />
      {because === "" ? null : <span className="block text-ink-2 text-sm">{because}</span>}
    </>
  );
}

function DepletionMoved({ pool }: { readonly pool: SparesPool }) {
  const { depletionDays } = poolMove(pool);
  if (depletionDays === null) return null;
  if (depletionDays === 0) return <Delta kind="same" text="same day" />;
  const days = count(Math.abs(depletionDays), "day");
  return depletionDays < 0 ? (
    <Delta kind="worse" text={`${days} nearer`} />
  ) : (
    <Delta kind="better" text={`${days} later`} />
  );
}

function NoSpare({ pool: { noSpare } }: { readonly pool: SparesPool }) {
  const text = `${percent(noSpare.mean)} (${percent(noSpare.low)} to ${percent(noSpare.high)})`;
  return (
    <span className="flex items-center justify-end gap-2">
      <SpanBar {...noSpare} max={1} text={text} />
      <span className="w-12">{percent(noSpare.mean)}</span>
    </span>
  );
}

const hoardersOf = (pool: SparesPool) => heldShares([pool]).filter((share) => share.hoards);

function heldText(pool: SparesPool): string {
  const hoarders = hoardersOf(pool);
  if (hoarders.length === 0) return "even";
  const [worst] = [...hoarders].sort((a, b) => (b.excess ?? b.book) - (a.excess ?? a.book));
  const others = hoarders.length > 1 ? ` +${hoarders.length - 1}` : "";
  return `${worst?.siteCode} ${worst?.index ? significant(worst.index, 2) : "no demand"}${others}`;
}

function highestIndex(pool: SparesPool): number {
  return Math.max(0, ...heldShares([pool]).map((share) => share.index ?? 0));
}

const who: readonly Column<SparesPool>[] = [
  {
    ...{ key: "part", header: "Part", filter: "text", width: "8.5rem" },
    value: (pool) => pool.number,
    word: (pool) => `${pool.number} ${pool.number.replace(/[^\p{L}\p{N}]/gu, "")}`,
    cell: (pool) => pool.number,
  },
  {
    ...{ key: "family", header: "Family", filter: "choice", priority: 3, hidden: true },
    value: (pool) => pool.family?.name ?? "no family",
  },
  {
    ...{ key: "class", header: "Class", filter: "choice", priority: 3, hidden: true },
    value: (pool) => itemClassName(pool.itemClass),
  },
  {
    ...{ key: "stage", header: "Supply stage", filter: "choice" },
    value: (pool) => stageOrder(pool.stage),
    word: (pool) => stageView(pool.stage).name,
    cell: (pool) => <StageBadge {...stageBadge(pool.stage)} />,
  },
];

const moved: readonly Column<SparesPool>[] = [
  {
    ...{
      key: "change",
      header: "Change of chance",
      unit: "in 7 days",
      filter: "text",
      priority: 1,
      width: "9rem",
    },
    value: (pool) => poolMove(pool).noSpare,
    word: (pool) => poolMove(pool).reasons.join(", "),
    cell: (pool) => <ChanceMoved pool={pool} />,
  },
];

const figures: readonly Column<SparesPool>[] = [
  {
    ...{ key: "no-spare", header: "No-spare chance", unit: "mean of 12 months", align: "end" },
    value: (pool) => pool.noSpare.mean,
    cell: (pool) => <NoSpare pool={pool} />,
  },
  {
    ...{ key: "installed", header: "Installed", unit: "units", align: "end", priority: 3 },
    value: (pool) => pool.installed,
    cell: (pool) => plainNumber(pool.installed),
  },
  {
    ...{ key: "book", header: "Book", unit: "pieces", align: "end", priority: 3 },
    value: (pool) => pool.book,
    cell: (pool) => (pool.book === null ? "not counted" : plainNumber(pool.book)),
  },
  {
    ...{ key: "usable", header: "Usable", unit: "pieces", align: "end", priority: 1 },
    value: (pool) => (pool.book === null ? null : pool.usable),
    cell: (pool) => (pool.book === null ? "not counted" : quantity(pool.usable)),
  },
  {
    ...{ key: "removals", header: "Removals", unit: "a year", align: "end", priority: 3 },
    value: (pool) => pool.removalsPerYear,
    cell: (pool) => significant(pool.removalsPerYear, 2),
  },
  {
    ...{ key: "p50", header: "Depletion", unit: "P50", priority: 3, hidden: true },
    value: (pool) => pool.depletionP50,
    cell: (pool) => depletionDayText(pool.depletionP50, pool),
  },
  {
    ...{ key: "p80", header: "Depletion", unit: "P80, moved in 7 days", width: "8rem" },
    value: (pool) => pool.depletionP80,
    cell: (pool) => (
      <>
        {depletionDayText(pool.depletionP80, pool)}
        <span className="block text-ink-2 text-sm">
          <DepletionMoved pool={pool} />
        </span>
      </>
    ),
  },
  {
    ...{ key: "held", header: "Held above share", unit: "worst site, index", priority: 3, width: "7.5rem" },
    value: highestIndex,
    cell: heldText,
  },
  {
    ...{ key: "overdue", header: "Repairs", unit: "overdue of out", align: "end", priority: 3 },
    value: (pool) => pool.repairsOverdue,
    cell: (pool) => (pool.repairsOut === 0 ? "0" : `${pool.repairsOverdue} of ${pool.repairsOut}`),
  },
];

const columns: readonly Column<SparesPool>[] = [...who, ...moved, ...figures];

/** The spares pools, what got worse first. */
export function SparesTable({ pools }: { readonly pools: readonly SparesPool[] }) {
  return (
    <DataTable
      id="spares"
      caption="Spares pools, what got worse first"
      noun="pools"
      rows={pools}
      columns={columns}
      rowKey={(pool) => pool.partId}
      rowHref={(pool) => `/parts/${pool.partId}`}
      empty={
        <EmptyState title="No pools yet">
          A pool stands here once a part is installed or on a shelf. Import an axis or stock register.
        </EmptyState>
      }
    />
  );
}
