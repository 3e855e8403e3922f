"use client";

import { Button } from "@/app/_ui/Button";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { takeThisFindingBack } from "@/app/(workspace)/sightings/actions";
import { SIGHT_ANSWERS, type SightVerdict } from "@/lib/view/sighting";
import { day } from "@/lib/view/time";

interface SettledTableProps {
  readonly verdicts: readonly SightVerdict[];
  readonly maySettle: boolean;
}

/** Decisions, the latest first; each can be taken back while nobody built on it. */
export function SettledTable({ verdicts, maySettle }: SettledTableProps) {
  const { done, tell, close } = useDone();
  const takeBack = async ({ id, what }: SightVerdict) => {
    const answer = await takeThisFindingBack({ verdictId: id });
    tell({ message: answer.ok ? `Taken back: ${what}` : answer.error.reason });
  };
  return (
    <>
      <RowTable
        caption="Decisions"
        heads={["Finding", "Decided", "Why", "By", { text: "Take back", print: false }]}
      >
        {verdicts.map((verdict) => (
          <tr key={verdict.id}>
            <th scope="row">{verdict.what}</th>
            <td>{SIGHT_ANSWERS[verdict.answer]}</td>
            <td>{verdict.reason}</td>
            <td>
              {verdict.decidedBy}, {day(verdict.decidedOn)}
            </td>
            <td className="no-print">
              {maySettle ? (
                <Button
                  kind="quiet"
                  onClick={() => takeBack(verdict)}
                  aria-label={`Take back ${verdict.what}`}
                >
                  Take back
                </Button>
              ) : null}
            </td>
          </tr>
        ))}
      </RowTable>
      <UndoBar message={done?.message ?? null} onClose={close} />
    </>
  );
}
