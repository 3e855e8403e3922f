"use client";

import { useTransition } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import { RowTable } from "@/app/_ui/RowTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { unmergeTheseParts } from "@/app/(workspace)/parts/numbers/actions";
import type { MadeMerge } from "@/lib/view/partNumbers";
import { day } from "@/lib/view/time";

interface Props {
  readonly merges: readonly MadeMerge[];
  readonly mayWrite: boolean;
}

const HEADS = ["Counts", "Set aside", "Moved", "How it is known", "By", { text: "Take back", print: false }];

/** Merges of parts, what moved, and the way back; what stayed after a way back is named. */
export function Merges({ merges, mayWrite }: Props) {
  const { done, tell, undo, close } = useDone();
  const [pending, start] = useTransition();
  const takeBack = (mergeId: string) =>
    start(async () => {
      const answer = await unmergeTheseParts({ mergeId });
      if (!answer.ok) return tell({ message: answer.error.reason });
      const { stayed } = answer.value;
      const rest = stayed.length === 0 ? "" : ` What was touched since stays: ${stayed.join("; ")}.`;
      tell({ message: `Two parts again.${rest}` });
    });
  return (
    <>
      <RowTable caption="Parts merged by people" heads={HEADS}>
        {merges.map(({ id, kept, other, moved, reason, by, on, undone }) => (
          <tr key={id}>
            <th scope="row">
              <AsOfLink href={`/parts/${kept.id}`}>{`${kept.maker} ${kept.number}`}</AsOfLink>
            </th>
            <td>{`${other.maker} ${other.number}`}</td>
            <td>{moved.join(", ") || "nothing but the number"}</td>
            <td>{reason}</td>
            <td>{`${by}, ${day(on)}`}</td>
            <td className="no-print">
              {undone ? (
                `Taken back by ${undone.by}, ${day(undone.on)}${undone.stayed.length > 0 ? `; stayed: ${undone.stayed.join("; ")}` : ""}`
              ) : mayWrite ? (
                <Button
                  kind="quiet"
                  aria-label={`Part ${other.number} from ${kept.number} again`}
                  aria-disabled={pending}
                  onClick={() => !pending && takeBack(id)}
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
