"use client";

import { Button } from "@/app/_ui/Button";
import { orOffline } from "@/app/_ui/draft/orOffline";
import { FormMessage } from "@/app/_ui/FormMessage";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { closeIt } from "@/app/(workspace)/projects/[code]/close/actions";
import type { ProjectClose } from "@/lib/view/closeOut";

interface CloseNowProps {
  readonly project: Pick<ProjectClose, "id" | "code" | "version" | "seen">;
  readonly lacking: boolean;
}

/** Closes the project, or says why it cannot be. */
export function CloseNow({ project, lacking }: CloseNowProps) {
  const change = useProjectChange();
  const { id: projectId, code, version, seen } = project;
  const close = () =>
    change.run({
      run: () => orOffline(closeIt({ projectId, version, seen })),
      done: "",
    });
  return (
    <div className="no-print mt-5">
      <p className="measure mb-3 text-ink-2">
        Closing books the released parts onto the shelf of the site, puts the new units into the installed
        base where they do not stand yet, and sets the check of the benefit for a year later, all in one step
        that can be taken back for 30 days.
      </p>
      <Button kind={lacking ? "plain" : "primary"} aria-disabled={change.pending} onClick={close}>
        {change.pending ? "Closing…" : `Close ${code}`}
      </Button>
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
    </div>
  );
}
