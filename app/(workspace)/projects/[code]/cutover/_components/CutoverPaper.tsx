import { RowTable } from "@/app/_ui/RowTable";
import { SignLines } from "@/app/_ui/SignLines";
import { CUTOVER_CAUTIONS, isCutoverCaution } from "@/lib/projects/cutoverCautions";
import { type CutoverPlan, cutoverStanding, span } from "@/lib/view/cutover";
import { moment } from "@/lib/view/time";

const HEADS = ["Begins", "Takes", "What", "Who", "Needs", "Began", "Over", "Signed"] as const;
const SIGNS = ["Project lead", "Electrician in charge", "Machine safety", "Production"] as const;

interface CutoverPaperProps {
  readonly plan: CutoverPlan;
  readonly timeZone: string;
}

/** The plan to hang up: times to be written by hand, and lines to sign. */
export function CutoverPaper({ plan, timeZone }: CutoverPaperProps) {
  const { expected } = cutoverStanding(plan, null);
  const planned = new Map(expected.steps.map(({ id, plannedStart }) => [id, plannedStart]));
  const written = (instant: string | null) => (instant === null ? "" : moment(instant, timeZone));
  return (
    <div className="paper-sheet hidden print:block">
      <RowTable caption={`Steps of ${plan.name}`} heads={HEADS}>
        {plan.steps.map(({ id, title, hours, who, phone, needs, caution, startedAt, endedAt }) => (
          <tr key={id}>
            <td className="whitespace-nowrap">{moment(planned.get(id) ?? null, timeZone)}</td>
            <td className="whitespace-nowrap">{span(hours)}</td>
            <td>
              {title}
              {isCutoverCaution(caution) ? <strong> ⚠ {CUTOVER_CAUTIONS[caution].title}</strong> : null}
            </td>
            <td>
              {who} {phone}
            </td>
            <td>{needs}</td>
            <td className="min-w-[15mm]">{written(startedAt)}</td>
            <td className="min-w-[15mm]">{written(endedAt)}</td>
            <td className="min-w-[15mm]" />
          </tr>
        ))}
      </RowTable>
      <ul className="mt-2 grid gap-0.5 text-xs">
        {Object.entries(CUTOVER_CAUTIONS).map(([key, { title, text }]) => (
          <li key={key}>
            <strong>⚠ {title}.</strong> {text}
          </li>
        ))}
        <li>National law and the rules of the site come first.</li>
      </ul>
      <SignLines roles={SIGNS} />
    </div>
  );
}
