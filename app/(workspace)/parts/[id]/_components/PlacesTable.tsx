"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { evidenceMark, evidenceView } from "@/lib/view/evidence";
import type { PartPlace } from "@/lib/view/partDossier";
import { day } from "@/lib/view/time";

const columns: readonly Column<PartPlace>[] = [
  {
    ...{ key: "designation", header: "Place", filter: "text" },
    value: (place) => place.designation,
  },
  { ...{ key: "site", header: "Site", filter: "choice" }, value: (place) => place.siteCode },
  {
    ...{ key: "line", header: "Line", filter: "choice", priority: 1 },
    value: (place) => place.lineCode,
    word: (place) => `${place.lineCode} ${place.lineName}`,
    cell: (place) => `${place.lineCode} ${place.lineName}`,
  },
  {
    ...{ key: "machine", header: "Machine", filter: "text", priority: 1 },
    value: (place) => place.machineCode,
    word: (place) => `${place.machineCode} ${place.machineName}`,
    cell: (place) => `${place.machineCode} ${place.machineName}`,
  },
  {
    ...{ key: "axis", header: "Axis", filter: "text" },
    value: (place) => place.axisCode,
    cell: (place) => place.axisCode ?? "none",
  },
  { ...{ key: "serial", header: "Serial", filter: "text", priority: 3 }, value: (place) => place.serial },
  { ...{ key: "revision", header: "Revision", filter: "choice" }, value: (place) => place.revision },
  {
    ...{ key: "since", header: "In place since", priority: 3 },
    value: (place) => place.sinceOn,
    cell: (place) => (place.sinceOn === null ? "not known" : day(place.sinceOn)),
  },
  {
    ...{ key: "evidence", header: "Known", filter: "choice", priority: 3 },
    value: (place) => evidenceView(place.evidence).text,
    cell: (place) => <EvidenceMark {...evidenceMark(place.evidence)} long />,
  },
];

/** The places of a part, to filter by site, line and revision. */
export function PlacesTable({ places }: { readonly places: readonly PartPlace[] }) {
  return (
    <DataTable
      id="places"
      caption="Places that hold the part"
      noun="places"
      rows={places}
      columns={columns}
      rowKey={(place) => place.id}
      rowHref={(place) => `/lines/${encodeURIComponent(place.lineCode)}#machine-${place.machineCode}`}
    />
  );
}
