"use client";

import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { CostFileForm } from "@/app/(workspace)/projects/[code]/money/_components/CostFileForm";
import { takeCostsBack } from "@/app/(workspace)/projects/[code]/money/actions";
import { count } from "@/lib/view/number";
import type { ProjectFile } from "@/lib/view/project";
import { day } from "@/lib/view/time";

/** A file taken over. */
interface TakenFile {
  readonly id: string;
  readonly fileName: string;
  readonly added: number;
  readonly createdBy: string;
  readonly createdOn: string;
  readonly takenBackBy: string | null;
}

interface ImportCostsProps {
  readonly project: Pick<ProjectFile, "id" | "currency">;
  readonly files: readonly TakenFile[];
  readonly mayWrite: boolean;
}

const HEADS = ["File", "Day", "By", { text: "Entries", end: true }, "State"];

/** Orders and invoices from a file or a sheet, looked at first, taken over at once and taken back at once. */
export function ImportCosts({ project, files, mayWrite }: ImportCostsProps) {
  const change = useProjectChange();
  const { id: projectId, currency } = project;
  return (
    <Section
      title="Orders and invoices from a file"
      lead={`Columns are found by their names: kind, number, day, amount, and where there are such currency, what for, class and order. Rows without a currency are in ${currency}. A number that is in the ledger already is never entered twice.`}
    >
      {files.length === 0 ? null : (
        <RowTable
          caption="Files taken over"
          heads={mayWrite ? [...HEADS, { text: "Undo", print: false }] : HEADS}
        >
          {files.map(({ id, fileName, added, createdBy, createdOn, takenBackBy }) => (
            <tr key={id}>
              <th scope="row">{fileName}</th>
              <td>{day(createdOn)}</td>
              <td>{createdBy}</td>
              <td data-align="end">{added}</td>
              <td>{takenBackBy === null ? "taken over" : `taken back by ${takenBackBy}`}</td>
              {mayWrite ? (
                <td className="no-print">
                  {takenBackBy === null ? (
                    <Button
                      kind="quiet"
                      aria-label={`Take ${fileName} back`}
                      aria-disabled={change.pending}
                      onClick={() =>
                        change.run({
                          run: () => takeCostsBack({ projectId, importId: id }),
                          done: `${fileName} was taken back: ${count(added, "entry", "entries")}.`,
                        })
                      }
                    >
                      Take back
                    </Button>
                  ) : null}
                </td>
              ) : null}
            </tr>
          ))}
        </RowTable>
      )}
      {mayWrite ? <CostFileForm projectId={projectId} change={change} /> : null}
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      <ChangeDone change={change} />
    </Section>
  );
}
