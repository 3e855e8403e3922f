"use client";

import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { ChangeNorm } from "@/app/(workspace)/lines/[code]/scope/_components/ChangeNorm";
import { saveNorm } from "@/app/(workspace)/lines/[code]/scope/actions";
import { plainNumber } from "@/lib/view/number";
import type { NormRow } from "@/lib/view/scopeNorm";

interface NormTableProps {
  readonly rows: readonly NormRow[];
  /** When the set shown was written; null is the product's own. */
  readonly seen: string | null;
  readonly mayChange: boolean;
}

const end = (text: string) => ({ text, end: true });
const HEADS = ["Norm", "Unit", end("Low"), end("Typical"), end("High")];

const shown = (value: number | undefined) =>
  value === undefined ? "" : plainNumber(value, Number.isInteger(value) ? 0 : 2);

/** The norms with a form for each; a change is said and can be taken back. */
export function NormTable({ rows, seen, mayChange }: NormTableProps) {
  const { done, tell, undo, close } = useDone();
  return (
    <>
      <RowTable caption="Norms" heads={mayChange ? [...HEADS, { text: "Change", print: false }] : HEADS}>
        {rows.map((row) => {
          const [low, typical, high] =
            row.values.length === 1 ? [undefined, row.values[0], undefined] : row.values;
          return (
            <tr key={row.key}>
              <th scope="row">{row.name}</th>
              <td>{row.unit}</td>
              <td data-align="end">{shown(low)}</td>
              <td data-align="end">{shown(typical)}</td>
              <td data-align="end">{shown(high)}</td>
              {mayChange ? (
                <td className="no-print">
                  <ChangeNorm
                    row={row}
                    seen={seen}
                    onChanged={(changedAt) =>
                      tell({
                        message: `${row.name} changed for all sites.`,
                        undo: () => saveNorm({ key: row.key, seen: changedAt, values: [...row.values] }),
                      })
                    }
                  />
                </td>
              ) : null}
            </tr>
          );
        })}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
