import { Dialog } from "@/app/_ui/Dialog";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { ObligationForm } from "@/app/(workspace)/dates/_components/ObligationForm";
import { changeDuty } from "@/app/(workspace)/dates/actions";
import type { Obligation, ObligationPlace } from "@/lib/view/obligation";

interface ChangeObligationProps {
  readonly duty: Obligation;
  readonly places: readonly ObligationPlace[];
  readonly tell: (done: Done) => void;
}

/** The button that changes what is said of a duty, and its form. */
export function ChangeObligation({ duty, places, tell }: ChangeObligationProps) {
  const { id: obligationId, version, siteId, line, kind, title, dueOn, source, owner, evidence } = duty;
  const before = { siteId, lineId: line?.id ?? null, kind, title, dueOn, source, owner, evidence };
  return (
    <Dialog trigger="Change" title={`Change: ${title}`} wide>
      {(close) => (
        <ObligationForm
          duty={duty}
          places={places}
          save={(wanted, why) => changeDuty({ ...wanted, obligationId, version, why })}
          onSaved={(saved, name) => {
            close();
            tell({ message: `Changed: ${name}.`, undo: () => changeDuty({ ...before, ...saved }) });
          }}
        />
      )}
    </Dialog>
  );
}
