"use client";

import type { KeyboardEvent } from "react";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { type Done, useDone } from "@/app/(workspace)/_components/useDone";
import { FigureButton } from "@/app/(workspace)/plans/inputs/_components/FigureButton";
import type { FigureGrid, FigureRow } from "@/lib/view/figureGrids";

interface FigureGridsProps {
  readonly grids: readonly FigureGrid[];
  readonly currencies: readonly string[];
}

/** Moves the focus to the cell above, below or beside; the form opens by Enter, as with any button. */
function walk(event: KeyboardEvent<HTMLTableElement>): void {
  const step = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] }[event.key];
  const at = (event.target as HTMLElement).closest("td");
  const row = at?.parentElement;
  if (!step || !at || !(row instanceof HTMLTableRowElement)) return;
  const [down = 0, right = 0] = step;
  const rows = [...(row.parentElement?.children ?? [])];
  const next = rows[rows.indexOf(row) + down]?.children[at.cellIndex + right];
  const button = next?.querySelector<HTMLButtonElement>("button");
  if (!button) return;
  event.preventDefault();
  button.focus();
}

/** The figures plans rest on, as tables whose cells open a form. */
export function FigureGrids({ grids, currencies }: FigureGridsProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      <p className="no-print text-ink-2 text-sm">
        Arrow keys move from figure to figure, Enter opens one, Esc leaves it.
      </p>
      {grids.map(({ id, title, lead, columns, rows }) => (
        <Section key={id} id={id} title={title} lead={lead}>
          <div className="table-frame">
            <table className="table" onKeyDown={walk}>
              <caption className="sr-only">{title}</caption>
              <thead>
                <tr>
                  <th scope="col" className="label">
                    What
                  </th>
                  <th scope="col" className="label">
                    Unit
                  </th>
                  {columns.map((column) => (
                    <th key={column} scope="col" className="label" data-align="end">
                      {column}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <GridRow key={row.head} row={row} currencies={currencies} tell={tell} />
                ))}
              </tbody>
            </table>
          </div>
        </Section>
      ))}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}

interface GridRowProps {
  readonly row: FigureRow;
  readonly currencies: readonly string[];
  readonly tell: (done: Done) => void;
}

function GridRow({ row, currencies, tell }: GridRowProps) {
  return (
    <tr>
      <th scope="row">
        {row.head}
        {row.note ? (
          <span translate="no" className="block text-ink-2 text-sm">
            {row.note}
          </span>
        ) : null}
      </th>
      <td className="text-ink-2">{row.unit}</td>
      {row.cells.map((cell) => (
        <td key={cell.name} data-align="end">
          <FigureButton {...{ cell, currencies, tell }} />
        </td>
      ))}
    </tr>
  );
}
