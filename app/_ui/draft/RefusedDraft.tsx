import type { ReactNode } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import type { Refusal } from "@/lib/access/action";

interface RefusedDraftProps {
  readonly refusal: Refusal | null;
  readonly onSettle: (mine: boolean) => void;
  /** What the other person wrote, beside what was typed here. */
  readonly children?: ReactNode;
}

/** Why what was typed was not saved; when somebody else wrote it, whose is to stand. */
export function RefusedDraft({ refusal, onSettle, children }: RefusedDraftProps) {
  return (
    <>
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      {refusal?.code === "conflict" ? (
        <>
          {children}
          <div className="no-print mt-2 flex gap-2">
            <Button onClick={() => onSettle(true)}>Write mine over theirs</Button>
            <Button onClick={() => onSettle(false)}>Take theirs</Button>
          </div>
        </>
      ) : null}
    </>
  );
}
