import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import type { Refusal } from "@/lib/access/action";

interface RefusedEntryProps {
  readonly refusal: Refusal | null;
  readonly onSettle: (mine: boolean) => void;
}

/** Why a check was not saved; when somebody else wrote it, whose is to stand. */
export function RefusedEntry({ refusal, onSettle }: RefusedEntryProps) {
  return (
    <>
      <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      {refusal?.code === "conflict" ? (
        <div className="no-print mt-2 flex gap-2">
          <Button onClick={() => onSettle(true)}>Write mine over theirs</Button>
          <Button onClick={() => onSettle(false)}>Take theirs</Button>
        </div>
      ) : null}
    </>
  );
}
