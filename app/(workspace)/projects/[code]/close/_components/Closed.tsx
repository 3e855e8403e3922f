"use client";

import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Notice } from "@/app/_ui/Notice";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { reopenIt } from "@/app/(workspace)/projects/[code]/close/actions";
import type { ClosingRow } from "@/lib/view/closeOut";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface ClosedProps {
  readonly code: string;
  readonly projectId: string;
  readonly version: number;
  readonly closing: ClosingRow;
  readonly mayWrite: boolean;
}

/** What a closing booked, and the way back. */
export function Closed({ code, projectId, version, closing, mayWrite }: ClosedProps) {
  const change = useProjectChange();
  const { pieces, places, checkOn, checkedOn } = closing;
  return (
    <Notice kind="info" title={`Closed ${day(closing.closedOn)} by ${closing.closedBy}`}>
      <p>
        {count(pieces, "piece")} went onto the shelf, {count(places, "place")} of the installed base got a new
        unit. The <AsOfLink href={`/projects/${encodeURIComponent(code)}/benefit`}>benefit</AsOfLink>{" "}
        {checkedOn === null ? `is checked on ${day(checkOn)}` : `was checked on ${day(checkedOn)}`}.
      </p>
      {mayWrite ? (
        <div className="no-print mt-2">
          <Button
            aria-disabled={change.pending}
            onClick={() =>
              change.run({
                run: () => reopenIt({ projectId, version }),
                done: "",
              })
            }
          >
            Take the closing back
          </Button>
          <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
        </div>
      ) : null}
    </Notice>
  );
}
