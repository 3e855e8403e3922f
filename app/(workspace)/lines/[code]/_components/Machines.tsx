import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { LinkButton } from "@/app/_ui/LinkButton";
import { AxisTable } from "@/app/(workspace)/lines/[code]/_components/AxisTable";
import { OtherItems } from "@/app/(workspace)/lines/[code]/_components/OtherItems";
import type { JudgedController } from "@/lib/retrofit/compatibility";
import { evidenceMark } from "@/lib/view/evidence";
import type { LineDossier, MachineRow } from "@/lib/view/lineDossier";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface MachinesProps {
  readonly machines: LineDossier["machines"];
  /** The line's controllers with what the rules say of them. */
  readonly judged: readonly JudgedController[];
}

/** The machines of a line; each opens to its axes with what is in their places. */
export function Machines({ machines, judged }: MachinesProps) {
  if (machines.length === 0) return <p>No machine is recorded on this line. Import its asset register.</p>;
  return (
    <>
      {machines.map((machine) => (
        <details
          key={machine.code}
          id={`machine-${machine.code}`}
          className="disclosure prints border-rule border-b target:bg-accent-soft"
        >
          <summary className="flex flex-wrap items-baseline gap-x-5 gap-y-1 py-2.5">
            <span translate="no" className="font-semibold">
              {machine.code} {machine.name}
            </span>
            <span className="text-ink-2">
              {count(machine.axes.length, "axis", "axes")}
              {machine.inServiceYear === null ? "" : `, since ${machine.inServiceYear}`}
            </span>
            <ControllerWords controller={machine.controller} judged={judged} />
          </summary>
          <div className="pb-4">
            <p className="no-print mb-3 flex flex-wrap gap-2">
              <LinkButton href={`/machines/${machine.id}`}>Machine page</LinkButton>
              <LinkButton href={`/machines/${machine.id}/card`}>Night card</LinkButton>
            </p>
            <AxisTable machine={machine} />
            <OtherItems items={machine.items} machine={machine.code} />
          </div>
        </details>
      ))}
    </>
  );
}

interface ControllerWordsProps {
  readonly controller: MachineRow["controller"];
  readonly judged: readonly JudgedController[];
}

function ControllerWords({ controller, judged }: ControllerWordsProps) {
  if (controller === null) return <span className="text-ink-2">no controller recorded</span>;
  const { designation, model, firmware, firmwareRaw, memoryPercent, readOn, evidence } = controller;
  const { hardware, axisLimit } = controller;
  const own = judged.find(({ facts }) => facts.designation === designation);
  const blocked = own?.verdicts.filter(({ state }) => state === "blocked") ?? [];
  return (
    <span
      data-anchor={`controller-${designation}`}
      className="flex flex-wrap items-baseline gap-x-3 text-ink-2"
    >
      <span>
        {model}
        {hardware === null ? "" : ` ${hardware}`} ({designation})
      </span>
      <span title={firmwareRaw === null ? undefined : `read as ${firmwareRaw}`}>
        {firmware === null ? "firmware not read" : `firmware ${firmware}`}
      </span>
      {axisLimit === null ? null : <span>at most {axisLimit} axes</span>}
      <span>{memoryPercent === null ? "memory not read" : `memory ${memoryPercent} %`}</span>
      {blocked.map(({ code, blocker }) => (
        <span key={code} className="border border-worse px-1 text-ink text-xs">
          ▼ {blocker}
        </span>
      ))}
      <EvidenceMark {...evidenceMark(evidence)} />
      {readOn === null ? null : <span>read {day(readOn)}</span>}
    </span>
  );
}
