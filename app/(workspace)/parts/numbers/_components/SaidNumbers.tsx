"use client";

import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { takeThisNumberBack } from "@/app/(workspace)/parts/numbers/actions";
import type { SaidNumber } from "@/lib/view/partNumbers";
import { day } from "@/lib/view/time";

interface Props {
  readonly said: readonly SaidNumber[];
  readonly mayWrite: boolean;
}

const HEADS = ["Number", "Said", "How it is known", "By", { text: "Take back", print: false }];

/** What people said of numbers, and the way back. */
export function SaidNumbers({ said, mayWrite }: Props) {
  const { done, tell, undo, close } = useDone();
  const [pending, start] = useTransition();
  const takeBack = ({ id, kind }: SaidNumber) =>
    start(async () => {
      const answer = await takeThisNumberBack({ id, kind });
      tell({ message: answer.ok ? "Taken back; the number is open again." : answer.error.reason });
    });
  return (
    <>
      <RowTable caption="What people said of numbers" heads={HEADS}>
        {said.map((one) => (
          <tr key={one.id}>
            <th scope="row">{one.written}</th>
            <td>{one.said}</td>
            <td>{one.reason}</td>
            <td>{`${one.by}, ${day(one.on)}`}</td>
            <td className="no-print">
              {mayWrite ? (
                <Button
                  kind="quiet"
                  aria-label={`Take back what was said of ${one.written}`}
                  aria-disabled={pending}
                  onClick={() => !pending && takeBack(one)}
                >
                  Take back
                </Button>
              ) : null}
            </td>
          </tr>
        ))}
      </RowTable>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
