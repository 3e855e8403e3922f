import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { StaleMark } from "@/app/_ui/StaleMark";
import { BindingCaution } from "@/app/(workspace)/_components/BindingCaution";
import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { evidenceMark } from "@/lib/view/evidence";
import type { LineDossier } from "@/lib/view/lineDossier";
import { type Obligation, obligationWords } from "@/lib/view/obligation";
import { day, distance } from "@/lib/view/time";

/** The safety and legal dates that bind the line, whatever it loses. */
export function BindingDates({ line }: { readonly line: LineDossier }) {
  const { obligations, asOf } = line;
  return (
    <>
      {obligations.length === 0 ? (
        <p>No safety or legal date of this line is on record. That does not mean there is none.</p>
      ) : (
        <>
          <ul className="grid gap-3">
            {obligations.map((duty) => (
              <Duty key={duty.id} duty={duty} asOf={asOf} />
            ))}
          </ul>
          <BindingCaution />
        </>
      )}
      <p className="no-print">
        <AsOfLink href="/dates#binding">Safety and legal dates on record</AsOfLink>
      </p>
    </>
  );
}

function Duty({ duty, asOf }: { readonly duty: Obligation; readonly asOf: IsoDate }) {
  const { kind, title, dueOn, doneOn, line, source, evidence, owner } = duty;
  const overdue = doneOn === null && dueOn < asOf;
  return (
    <li className="measure border-ink border-t pt-1.5">
      <DutyMark {...{ kind, title, dueOn }} />{" "}
      <strong>
        {overdue ? <StaleMark text="Overdue" /> : null} {day(dueOn)}: {title}
      </strong>
      {line === null ? " (whole site)" : ""}
      <span className="block text-ink-2">
        {obligationWords(kind).name}, {doneOn === null ? distance(dueOn, asOf) : `done on ${day(doneOn)}`}.{" "}
        {owner ?? "Nobody answers for it"}. Source: {source} <EvidenceMark {...evidenceMark(evidence)} long />
      </span>
    </li>
  );
}
