"use client";

import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import type { RowProblem } from "@/lib/view/importPreview";
import type { Paged } from "@/lib/view/importView";
import { plainNumber } from "@/lib/view/number";
import { NextPage } from "./NextPage";

const severityWord = (one: RowProblem) => (one.severity === "error" ? "row is left out" : "please look");

const COLUMNS: readonly Column<RowProblem>[] = [
  { key: "row", header: "Row", align: "end", value: (one) => one.rowNumber, filter: "text", priority: 1 },
  {
    key: "column",
    header: "Column",
    value: (one) => one.column ?? "whole row",
    filter: "choice",
    priority: 1,
  },
  { key: "found", header: "Found", value: (one) => one.found, filter: "text", priority: 1 },
  { key: "problem", header: "Problem", value: (one) => one.problem, filter: "text", priority: 1 },
  { key: "remedy", header: "What to do", value: (one) => one.remedy, priority: 2 },
  { key: "severity", header: "Effect", value: severityWord, filter: "choice", priority: 1 },
];

interface Props {
  readonly problems: Paged<RowProblem>;
}

/** Each problem with its row and column, what was found and what to do. */
export function ProblemTable({ problems: { shown, count, next } }: Props) {
  if (count === 0) return <p>No problem was found in any row.</p>;
  return (
    <>
      {count > shown.length ? (
        <p className="mb-2 text-ink-2">
          {plainNumber(shown.length)} of {plainNumber(count)} problems are listed, errors before warnings.
        </p>
      ) : null}
      <DataTable
        id="problems"
        caption="Problems by row and column"
        rows={shown}
        columns={COLUMNS}
        rowKey={(one) => `${one.rowNumber} ${one.column} ${one.field} ${one.problem}`}
        noun="problems"
      />
      <NextPage list="problems" next={next}>
        Next problems
      </NextPage>
    </>
  );
}
