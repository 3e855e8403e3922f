"use client";

import { useMemo } from "react";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { BoardRow } from "@/app/(workspace)/plans/[id]/_components/board/BoardRow";
import { type BoardEdit, boardEdit } from "@/app/(workspace)/plans/[id]/_components/board/boardEdit";
import { money } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import type { BoardLine, BoardView } from "@/lib/view/planBoard";

interface PlanBoardProps {
  readonly planId: string;
  readonly version: number;
  /** The person may change the plan, and it is a draft. */
  readonly writes: boolean;
  readonly view: Pick<BoardView, "asOf" | "quarters" | "lines" | "years" | "inputs" | "broken">;
}

/** Lines by site against the quarters of the plan; a way sits in the quarter of its window. */
export function PlanBoard({ planId, version, writes, view }: PlanBoardProps) {
  const { done, tell, undo, close } = useDone();
  const edit = useMemo(
    () => (writes ? boardEdit({ planId, version, tell }) : null),
    [planId, version, writes, tell],
  );
  const sites = view.inputs.sites.filter(({ id }) => view.lines.some(({ siteId }) => siteId === id));
  const broken = new Set(view.broken.flatMap(({ lineIds }) => lineIds));
  return (
    <>
      {writes ? (
        <p className="no-print mb-2 text-ink-2 text-sm">
          Drag a way to another quarter of its line, or press Enter on it for all its places. Alt with the
          left or right arrow moves it one place, Delete takes it out.
        </p>
      ) : null}
      <div className="table-frame" data-long="">
        <table className="table plan-board">
          <caption className="sr-only">Plan board: lines by site against quarters</caption>
          <thead>
            <YearRow view={view} />
            <tr>
              <th scope="col" className="label">
                Line
              </th>
              {view.quarters.map(({ id }) => (
                <th key={id} scope="col" className="label" data-year-start={id.endsWith("Q1") || undefined}>
                  <span className="sr-only">{id.slice(0, 4)} </span>
                  {id.slice(5)}
                </th>
              ))}
              <th scope="col" className="label" data-align="end">
                Cost <span className="unit">EUR</span>
              </th>
            </tr>
          </thead>
          {sites.map(({ id, code, name }) => (
            <SiteRows key={id} {...{ view, edit, broken, siteId: id, title: `${code} ${name}` }} />
          ))}
        </table>
      </div>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}

function YearRow({ view: { quarters, years } }: Pick<PlanBoardProps, "view">) {
  return (
    <tr>
      <td />
      {years.map(({ year, most, spent }) => (
        <th
          key={year}
          scope="colgroup"
          colSpan={quarters.filter((quarter) => quarter.year === year).length}
          data-year-start=""
          className="label"
        >
          {year}{" "}
          <span className={`unit ${most !== null && spent > most ? "text-worse" : ""}`}>
            {most !== null && spent > most ? "▲ " : ""}
            {money(spent)} of {most === null ? "no stated budget" : money(most)}
          </span>
        </th>
      ))}
      <td />
    </tr>
  );
}

interface SiteRowsProps {
  readonly view: PlanBoardProps["view"];
  readonly edit: BoardEdit | null;
  readonly broken: ReadonlySet<string>;
  readonly siteId: string;
  readonly title: string;
}

function SiteRows({ view, edit, broken, siteId, title }: SiteRowsProps) {
  const { quarters, inputs, lines, asOf } = view;
  const windows = inputs.windows.filter((window) => window.siteId === siteId);
  const own = lines.filter((line): line is BoardLine => line.siteId === siteId);
  return (
    <tbody>
      <tr className="plan-site">
        <th scope="rowgroup">{title}</th>
        {quarters.map(({ id, startsOn }, i) => {
          const until = quarters[i + 1]?.startsOn ?? "9999-12-31";
          const here = windows.filter((window) => startsOn <= window.startsOn && window.startsOn < until);
          return (
            <td key={id} data-year-start={id.endsWith("Q1") || undefined}>
              {here.map((window) => (
                <span key={window.id} className="block text-ink-2 text-xs" title={window.name}>
                  {window.usableHours === null ? "hours not known" : `${plainNumber(window.usableHours)} h`}
                </span>
              ))}
            </td>
          );
        })}
        <td />
      </tr>
      {own.map((line) => (
        <BoardRow key={line.lineId} {...{ line, quarters, edit, asOf, broken: broken.has(line.lineId) }} />
      ))}
    </tbody>
  );
}
