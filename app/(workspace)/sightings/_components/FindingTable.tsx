"use client";

import { useMemo } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { SettleFinding } from "@/app/(workspace)/sightings/_components/SettleFinding";
import { SIGHT_ANSWERS, SIGHT_KINDS, type SightRow } from "@/lib/view/sighting";
import { day } from "@/lib/view/time";

const READ: readonly Column<SightRow>[] = [
  {
    ...{ key: "place", header: "On record", filter: "text", width: "12rem" },
    value: ({ place }) => place || null,
    cell: ({ place, href }) =>
      href === null ? (
        <span className="text-ink-2">{place || "nothing"}</span>
      ) : (
        <AsOfLink href={href}>{place}</AsOfLink>
      ),
  },
  {
    ...{ key: "kind", header: "Finding", filter: "choice", priority: 1 },
    value: ({ kind }) => SIGHT_KINDS[kind].name,
  },
  {
    ...{ key: "said", header: "What both say", filter: "text", width: "14rem", priority: 1 },
    value: ({ said }) => said.join("; "),
    cell: ({ said }) =>
      said.map((one) => (
        <span key={one} className="block">
          {one}
        </span>
      )),
  },
  {
    ...{ key: "seen", header: "Seen as", filter: "text" },
    value: ({ device }) => device || null,
    cell: ({ device, by }) => (
      <>
        {device || "not seen"}
        {by === null ? null : <span className="block text-ink-2 text-xs">found by {by}</span>}
      </>
    ),
  },
  {
    ...{ key: "seenOn", header: "Seen last" },
    value: ({ seenOn }) => seenOn,
    cell: ({ seenOn, firstOn, source }) =>
      seenOn === null ? (
        "never"
      ) : (
        <>
          {day(seenOn)}
          <span className="block text-ink-2 text-xs">
            {[source, firstOn === null || firstOn === seenOn ? null : `so since ${day(firstOn)}`]
              .filter(Boolean)
              .join(", ")}
          </span>
        </>
      ),
  },
];

interface FindingTableProps {
  readonly rows: readonly SightRow[];
  readonly siteId: string;
  readonly maySettle: boolean;
}

function columnsFor(
  siteId: string,
  { maySettle, tell }: { readonly maySettle: boolean; readonly tell: (done: Done) => void },
) {
  const settled: Column<SightRow> = {
    ...{ key: "settled", header: "Decided", filter: "choice", priority: 1 },
    value: ({ verdict, answers }) =>
      verdict ? SIGHT_ANSWERS[verdict.answer] : answers.length === 0 ? "nothing to decide" : "open",
    cell: (row) => {
      const { verdict, answers } = row;
      if (verdict)
        return (
          <>
            {SIGHT_ANSWERS[verdict.answer]}
            <span className="block text-ink-2 text-xs">
              {verdict.reason} {verdict.decidedBy}, {day(verdict.decidedOn)}
            </span>
          </>
        );
      if (answers.length === 0) return null;
      return maySettle ? <SettleFinding row={row} siteId={siteId} tell={tell} /> : "open";
    },
  };
  return [...READ, settled];
}

/** What lists and register say of each other, where they part first. */
export function FindingTable({ rows, siteId, maySettle }: FindingTableProps) {
  const { done, tell, undo, close } = useDone();
  const columns = useMemo(() => columnsFor(siteId, { maySettle, tell }), [siteId, maySettle, tell]);
  return (
    <>
      <DataTable
        id="findings"
        caption="Lists and register"
        noun="findings"
        rows={rows}
        columns={columns}
        rowKey={({ mark, source, seenOn }) => `${mark} ${source} ${seenOn}`}
      />
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
