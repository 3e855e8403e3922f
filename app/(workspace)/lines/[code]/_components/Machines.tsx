import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { AxisTable } from "@/app/(workspace)/lines/[code]/_components/AxisTable";
import { OpenTarget } from "@/app/(workspace)/lines/[code]/_components/OpenTarget";
import { OtherItems } from "@/app/(workspace)/lines/[code]/_components/OtherItems";
import { evidenceMark } from "@/lib/view/evidence";
import { floorState, MEMORY_CAUTION_PERCENT } from "@/lib/view/lineControllers";
import type { LineDossier, MachineRow } from "@/lib/view/lineDossier";
import { count } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface MachinesProps {
  readonly machines: LineDossier["machines"];
  readonly floor: number | null;
}

/** The machines of a line; each opens to its axes with what is in their places. */
export function Machines({ machines, floor }: MachinesProps) {
  if (machines.length === 0) return <p>No machine is recorded on this line. Import its asset register.</p>;
  return (
    <>
      <OpenTarget />
      {machines.map((machine) => (
        <details
          key={machine.code}
          id={`machine-${machine.code}`}
          className="disclosure border-rule border-b target:bg-accent-soft"
        >
          <summary className="flex flex-wrap items-baseline gap-x-5 gap-y-1 py-2.5">
            <span className="font-semibold">
              {machine.code} {machine.name}
            </span>
            <span className="text-ink-2">
              {count(machine.axes.length, "axis", "axes")}
              {machine.inServiceYear === null ? "" : `, since ${machine.inServiceYear}`}
            </span>
            <ControllerWords controller={machine.controller} floor={floor} />
          </summary>
          <div className="pb-4">
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
  readonly floor: number | null;
}

function ControllerWords({ controller, floor }: ControllerWordsProps) {
  if (controller === null) return <span className="text-ink-2">no controller recorded</span>;
  const { designation, model, firmware, firmwareRaw, memoryPercent, readOn, evidence } = controller;
  const below = floorState(firmware, floor) === "below";
  const tight = memoryPercent !== null && memoryPercent >= MEMORY_CAUTION_PERCENT;
  return (
    <span data-controller={designation} className="flex flex-wrap items-baseline gap-x-3 text-ink-2">
      <span>
        {model} ({designation})
      </span>
      <span title={firmwareRaw === null ? undefined : `read as ${firmwareRaw}`}>
        {firmware === null ? "firmware not read" : `firmware ${firmware}`}
      </span>
      {below ? (
        <span className="border border-worse px-1 text-ink text-xs">▼ Firmware floor {floor}</span>
      ) : null}
      <span>{memoryPercent === null ? "memory not read" : `memory ${memoryPercent} %`}</span>
      {tight ? <span className="border border-ink px-1 text-ink text-xs">Memory headroom</span> : null}
      <EvidenceMark {...evidenceMark(evidence)} />
      {readOn === null ? null : <span>read {day(readOn)}</span>}
    </span>
  );
}
