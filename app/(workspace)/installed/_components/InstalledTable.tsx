"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EvidenceShare } from "@/app/(workspace)/installed/_components/EvidenceShare";
import {
  type InstalledMap,
  type InstalledRow,
  installedHref,
  installedNoun,
  knownShare,
} from "@/lib/view/installed";
import { count, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const number = (key: keyof InstalledRow & string, header: string, unit?: string): Column<InstalledRow> => ({
  ...{ key, header, align: "end" },
  ...(unit === undefined ? {} : { unit }),
  value: (row) => Number(row[key]),
  cell: (row) => plainNumber(Number(row[key])),
});

const CODE: Column<InstalledRow> = {
  ...{ key: "code", header: "Code", filter: "text", width: "6rem" },
  value: ({ code }) => code,
};
const NAME: Column<InstalledRow> = {
  ...{ key: "name", header: "Name", filter: "text", priority: 1 },
  value: ({ name }) => name,
};

const COUNTS: readonly Column<InstalledRow>[] = [
  { ...number("axes", "Axes"), priority: 1 },
  {
    ...number("panels", "Panels"),
    cell: ({ panels, unplaced }) => (
      <>
        {panels === 0 ? "none on record" : plainNumber(panels)}
        {panels === 0 || unplaced === 0 ? null : (
          <span className="block text-ink-2 text-xs">{count(unplaced, "place")} in none</span>
        )}
      </>
    ),
  },
  number("places", "Places"),
  number("unidentified", "Not identified", "places"),
  { ...number("units", "Units", "with serial"), priority: 3 },
  {
    ...{ key: "evidence", header: "Evidence", unit: "places by how well known", align: "end" },
    value: knownShare,
    cell: (row) => <EvidenceShare counts={row.evidence} />,
  },
  {
    ...{ key: "read", header: "Controllers read since", priority: 3 },
    value: ({ readSince }) => readSince,
    cell: ({ readSince, controllersUnread }) => (
      <>
        {readSince === null ? "not read" : day(readSince)}
        {controllersUnread === 0 ? null : (
          <span className="block text-ink-2 text-xs">{controllersUnread} not read</span>
        )}
      </>
    ),
  },
  {
    ...{ key: "change", header: "Last unit changed", priority: 3 },
    value: ({ lastChangeOn }) => lastChangeOn,
    cell: ({ lastChangeOn }) => (lastChangeOn === null ? "none on record" : day(lastChangeOn)),
  },
];

const COLUMNS: Readonly<Record<InstalledMap["level"], readonly Column<InstalledRow>[]>> = {
  group: [CODE, NAME, number("lines", "Lines"), number("machines", "Machines"), ...COUNTS],
  site: [CODE, NAME, number("machines", "Machines"), ...COUNTS],
  line: [CODE, NAME, ...COUNTS],
};

/** One level of the installed map; a row opens the level below, a machine its page. */
export function InstalledTable({ level, rows }: Pick<InstalledMap, "level" | "rows">) {
  return (
    <DataTable
      id="installed"
      caption={`Installed ${installedNoun(level)}`}
      noun={installedNoun(level)}
      rows={rows}
      columns={COLUMNS[level]}
      rowKey={(row) => row.id}
      rowHref={(row) => installedHref(level, row)}
      initialSort={{ key: "code", descending: false }}
    />
  );
}
