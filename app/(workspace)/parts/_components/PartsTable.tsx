"use client";

import { useMemo } from "react";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { SpanBar } from "@/app/_ui/SpanBar";
import { StageBadge } from "@/app/_ui/StageBadge";
import { percent } from "@/lib/view/chance";
import { itemClassName } from "@/lib/view/linePart";
import { plainNumber, quantity } from "@/lib/view/number";
import { depletionWord, installedWord, type ListedPart, usableWord } from "@/lib/view/partList";
import { stageBadge, stageOrder, stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

const MOST_CHANCE = 1;

function NoSpare({ part }: { readonly part: ListedPart }) {
  const { noSpare } = part;
  if (noSpare === null) return <span className="text-ink-3">no pool</span>;
  const text = `${percent(noSpare.mean)} (${percent(noSpare.low)} to ${percent(noSpare.high)})`;
  return (
    <span className="flex items-center justify-end gap-2">
      <SpanBar {...noSpare} max={MOST_CHANCE} text={text} />
      <span className="w-12">{percent(noSpare.mean)}</span>
    </span>
  );
}

const identity: readonly Column<ListedPart>[] = [
  {
    ...{ key: "number", header: "Part", filter: "text", width: "9rem" },
    value: (part) => part.number,
    // Found without its dashes too.
    word: (part) => `${part.number} ${part.number.replace(/[^\p{L}\p{N}]/gu, "")}`,
  },
  {
    ...{ key: "maker", header: "Maker", filter: "choice", priority: 3 },
    value: (part) => part.maker,
  },
  {
    ...{ key: "text", header: "Description", filter: "text", priority: 3, width: "13rem" },
    value: (part) => part.description,
  },
  {
    ...{ key: "family", header: "Family", filter: "text", priority: 3, hidden: true },
    value: (part) => part.family,
    cell: (part) => part.family ?? "none",
  },
  {
    ...{ key: "class", header: "Class", filter: "choice", priority: 3 },
    value: (part) => itemClassName(part.itemClass),
  },
  {
    ...{ key: "stage", header: "Supply stage", filter: "choice", priority: 1 },
    value: (part) => stageOrder(part.stage),
    word: (part) => stageView(part.stage).name,
    cell: (part) => <StageBadge {...stageBadge(part.stage)} />,
  },
  {
    ...{ key: "last-order", header: "Last order", priority: 3, hidden: true },
    value: (part) => part.lastOrderOn,
    cell: (part) => (part.lastOrderOn === null ? "none stated" : day(part.lastOrderOn)),
  },
];

const counts: readonly Column<ListedPart>[] = [
  {
    ...{ key: "installed", header: "Installed", unit: "group", align: "end", filter: "choice" },
    value: (part) => part.installed,
    word: installedWord,
    cell: (part) => plainNumber(part.installed),
  },
  {
    ...{ key: "here", header: "Installed", unit: "your sites", align: "end", hidden: true },
    value: (part) => part.installedHere,
    cell: (part) => plainNumber(part.installedHere),
  },
  {
    ...{ key: "book", header: "Book", unit: "pieces", align: "end", priority: 3 },
    value: (part) => part.book,
    cell: (part) => (part.book === null ? usableWord(part) : plainNumber(part.book)),
  },
  {
    ...{ key: "usable", header: "Usable", unit: "pieces", align: "end", filter: "choice", priority: 1 },
    value: (part) => part.usable,
    word: usableWord,
    cell: (part) => (part.book === null ? usableWord(part) : quantity(part.usable)),
  },
  {
    ...{ key: "no-spare", header: "No-spare chance", unit: "mean of 12 months", align: "end" },
    value: (part) => part.noSpare?.mean ?? null,
    cell: (part) => <NoSpare part={part} />,
  },
];

const depletion = (asOf: string): Column<ListedPart> => ({
  ...{ key: "depletion", header: "Depletion", unit: "P80", filter: "choice", width: "8.5rem" },
  value: (part) => part.depletionP80,
  word: (part) => depletionWord(part, asOf),
  cell: ({ depletionP80, ...part }) => {
    if (depletionP80 === null) return depletionWord({ ...part, depletionP80 }, asOf);
    return depletionP80 <= asOf ? "Empty now" : day(depletionP80);
  },
});

/** All parts, filtered by class, maker, stage, use, shelf and depletion. */
export function PartsTable({
  parts,
  asOf,
}: {
  readonly parts: readonly ListedPart[];
  readonly asOf: string;
}) {
  const columns = useMemo(() => [...identity, ...counts, depletion(asOf)], [asOf]);
  return (
    <DataTable
      id="parts"
      caption="Parts of the group"
      noun="parts"
      rows={parts}
      columns={columns}
      rowKey={(part) => part.id}
      rowHref={(part) => `/parts/${part.id}`}
      empty={
        <p className="measure">
          No part is on record. Import an asset or lifecycle register to bring parts in.
        </p>
      }
    />
  );
}
