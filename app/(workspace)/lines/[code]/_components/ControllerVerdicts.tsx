import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { VerdictMark } from "@/app/(workspace)/_components/VerdictMark";
import type { JudgedController } from "@/lib/retrofit/compatibility";
import { axesOf } from "@/lib/retrofit/compatibility/facts";
import type { Verdict } from "@/lib/retrofit/compatibility/verdict";
import { firmwareWord } from "@/lib/retrofit/firmwareLevel";
import { evidenceMark } from "@/lib/view/evidence";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface ControllerVerdictsProps {
  readonly code: string;
  readonly controllers: readonly JudgedController[];
}

/** Each controller with what every rule says of it. */
export function ControllerVerdicts({ code, controllers }: ControllerVerdictsProps) {
  return (
    <div className="overflow-x-auto">
      <table className="table">
        <caption className="sr-only">What the rules say of the controllers of {code}</caption>
        <thead>
          <tr>
            <th scope="col">Controller</th>
            <th scope="col">In the way</th>
            <th scope="col">Clear</th>
          </tr>
        </thead>
        <tbody>
          {controllers.map((one) => (
            <tr key={one.facts.designation}>
              <th scope="row">
                <Reading judged={one} />
              </th>
              <td>
                <Verdicts verdicts={one.verdicts.filter(({ state }) => state !== "clear")} />
              </td>
              <td>
                <Verdicts verdicts={one.verdicts.filter(({ state }) => state === "clear")} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Reading({ judged }: { readonly judged: JudgedController }) {
  const { facts, state } = judged;
  const { designation, model, level, memoryPercent, evidence, readOn, leads } = facts;
  return (
    <span className="grid gap-0.5 font-normal">
      <span className="flex flex-wrap items-baseline gap-x-2">
        <strong>{designation}</strong> <VerdictMark state={state} />
      </span>
      <span>
        {model}, level {firmwareWord(level)}
      </span>
      <span>{memoryPercent === null ? "memory not read" : `memory ${memoryPercent} %`}</span>
      <span>
        {count(axesOf(facts), "axis", "axes")}
        {leads ? ", leads the line" : ""}
      </span>
      <span className="flex items-baseline gap-x-1.5 text-sm">
        <EvidenceMark {...evidenceMark(evidence)} long />
        {readOn === null ? null : day(readOn)}
      </span>
    </span>
  );
}

function Verdicts({ verdicts }: { readonly verdicts: readonly Verdict[] }) {
  if (verdicts.length === 0) return <span className="text-ink-2">nothing</span>;
  return (
    <ul className="grid gap-2">
      {verdicts.map((verdict) => (
        <li key={verdict.code} className="measure text-sm">
          <VerdictMark state={verdict.state} /> <strong>{verdict.blocker}</strong>{" "}
          <span className="text-ink-2">
            ({verdict.code}, version {verdict.version})
          </span>
          : {verdict.arithmetic}
          <span className="block text-ink-2">
            {verdict.facts.map(({ text, evidence }, i) => (
              <span key={text}>
                {i === 0 ? "From " : "; "}
                {text} <EvidenceMark {...evidenceMark(evidence)} />
              </span>
            ))}
          </span>
        </li>
      ))}
    </ul>
  );
}
