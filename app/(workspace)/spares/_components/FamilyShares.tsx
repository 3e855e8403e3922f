"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EmptyState } from "@/app/_ui/EmptyState";
import { percent } from "@/lib/view/chance";
import { plainNumber, quantity, significant } from "@/lib/view/number";
import type { FamilyShare } from "@/lib/view/sparesShares";

const TOLD = 3;

const columns: readonly Column<FamilyShare>[] = [
  { ...{ key: "family", header: "Family", filter: "choice", width: "8rem" }, value: (row) => row.family },
  { ...{ key: "site", header: "Site", filter: "choice", priority: 1 }, value: (row) => row.siteCode },
  {
    ...{ key: "units", header: "Installed", unit: "units", align: "end", priority: 3 },
    value: (row) => row.units,
    cell: (row) => plainNumber(row.units),
  },
  {
    ...{ key: "of-units", header: "Share of units", align: "end", priority: 3 },
    value: (row) => row.ofUnits,
    cell: (row) => (row.ofUnits === null ? "none installed" : percent(row.ofUnits)),
  },
  {
    ...{ key: "of-demand", header: "Share of removals", unit: "expected", align: "end" },
    value: (row) => row.ofDemand,
    cell: (row) => (row.ofDemand === null ? "no demand" : percent(row.ofDemand)),
  },
  {
    ...{ key: "book", header: "Book", unit: "pieces", align: "end" },
    value: (row) => row.book,
    cell: (row) => plainNumber(row.book),
  },
  {
    ...{ key: "usable", header: "Usable", unit: "pieces", align: "end", priority: 3 },
    value: (row) => row.usable,
    cell: (row) => quantity(row.usable),
  },
  {
    ...{ key: "of-spares", header: "Share of spares", unit: "on the books", align: "end" },
    value: (row) => row.ofSpares,
    cell: (row) => (row.ofSpares === null ? "no spares" : percent(row.ofSpares)),
  },
  {
    ...{ key: "index", header: "Index", unit: "spares ÷ removals", align: "end", priority: 1 },
    value: (row) => row.index,
    cell: (row) => (row.index === null ? "no demand" : significant(row.index, 3)),
  },
  {
    ...{ key: "excess", header: "Beyond share", unit: "pieces", align: "end" },
    value: (row) => row.excess,
    cell: (row) => (row.excess === null ? "no demand" : plainNumber(row.excess, 1)),
  },
  {
    ...{ key: "mark", header: "Mark", filter: "choice", priority: 1, width: "8.5rem" },
    value: (row) => (row.hoards ? "▲ above share" : "within share"),
  },
];

function sentence({ siteCode, family, ofSpares, ofUnits, units, groupUnits, book, groupBook }: FamilyShare) {
  return `${siteCode} holds ${percent(ofSpares)} of the ${family} spares (${book} of ${groupBook}) with ${percent(ofUnits)} of the units (${units} of ${plainNumber(groupUnits)}).`;
}

/** Which site holds more of a family's spares than its demand explains. */
export function FamilyShares({ shares }: { readonly shares: readonly FamilyShare[] }) {
  const told = shares.filter((row) => row.hoards && row.ofUnits !== null).slice(0, TOLD);
  return (
    <>
      {told.length === 0 ? null : (
        <ul className="measure mb-4 list-disc pl-5">
          {told.map((row) => (
            <li key={`${row.familyId} ${row.siteCode}`}>{sentence(row)}</li>
          ))}
        </ul>
      )}
      <DataTable
        id="held"
        caption="Share of spares against share of removals, by family and site"
        noun="rows"
        rows={shares}
        columns={columns}
        rowKey={(row) => `${row.familyId} ${row.siteCode}`}
        empty={
          <EmptyState title="No spares of a family are counted">
            Import a stock register to see who holds what.
          </EmptyState>
        }
      />
    </>
  );
}
