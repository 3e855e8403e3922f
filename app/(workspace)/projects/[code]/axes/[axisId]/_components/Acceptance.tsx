"use client";

import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { Section } from "@/app/_ui/Section";
import { ChangeDone } from "@/app/(workspace)/projects/[code]/_components/ChangeDone";
import { useProjectChange } from "@/app/(workspace)/projects/[code]/_components/useProjectChange";
import { acceptThisAxis } from "@/app/(workspace)/projects/[code]/axes/actions";
import type { AxisFile } from "@/lib/view/axisRecord";
import { day } from "@/lib/view/time";

interface AcceptanceProps {
  readonly axis: AxisFile;
  readonly hindrances: readonly string[];
  readonly mayAccept: boolean;
}

/** Accepts the axis, or says check by check why it cannot be. */
export function Acceptance({ axis, hindrances, mayAccept }: AcceptanceProps) {
  const change = useProjectChange();
  const ids = { projectId: axis.projectId, axisId: axis.id };
  const set = (accepted: boolean) =>
    change.run({
      run: () => acceptThisAxis({ ...ids, accepted }),
      done: accepted ? "Axis accepted." : "Acceptance taken back.",
      undo: () => acceptThisAxis({ ...ids, accepted: !accepted }),
    });
  return (
    <Section title="Acceptance">
      <FormMessage kind="problem">{change.refusal?.reason}</FormMessage>
      {axis.acceptedOn === null ? (
        <Hindrances hindrances={hindrances} />
      ) : (
        <p>{`Accepted on ${day(axis.acceptedOn)} by ${axis.acceptedBy}. The record cannot be changed until that is taken back.`}</p>
      )}
      {mayAccept ? (
        <div className="no-print mt-4">
          <Button
            kind={axis.acceptedOn === null ? "primary" : "plain"}
            disabled={change.pending}
            onClick={() => set(axis.acceptedOn === null)}
          >
            {axis.acceptedOn === null ? "Accept this axis" : "Take the acceptance back"}
          </Button>
        </div>
      ) : null}
      <ChangeDone change={change} />
    </Section>
  );
}

function Hindrances({ hindrances }: { readonly hindrances: readonly string[] }) {
  if (hindrances.length === 0) return <p>Every check is passed or does not apply.</p>;
  return (
    <>
      <p>{`${hindrances.length} of the checks stand in the way:`}</p>
      <ul className="mt-2 list-disc pl-6">
        {hindrances.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </>
  );
}
