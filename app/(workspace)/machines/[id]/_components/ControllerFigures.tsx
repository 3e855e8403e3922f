import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { evidenceMark } from "@/lib/view/evidence";
import type { MachineController } from "@/lib/view/machine";
import { NOT_KNOWN } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** What was read off the controller, when, and which other machines stop with it. */
export function ControllerFigures({ controller }: { readonly controller: MachineController | null }) {
  if (controller === null) return <p>No controller is recorded for this machine.</p>;
  return (
    <dl className="grid grid-cols-[repeat(auto-fill,minmax(10rem,1fr))] gap-x-6 gap-y-3">
      {figuresOf(controller).map(([name, value]) => (
        <div key={name}>
          <dt className="label">{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      <div>
        <dt className="label">Evidence</dt>
        <dd>
          <EvidenceMark {...evidenceMark(controller.evidence)} long />
        </dd>
      </div>
    </dl>
  );
}

function figuresOf(controller: MachineController): [name: string, value: string][] {
  const { firmware, firmwareRaw, memoryPercent, axes, axisLimit, sharedWith, leadsLine } = controller;
  const raw = firmwareRaw === null || firmwareRaw === String(firmware) ? "" : ` (read as ${firmwareRaw})`;
  return [
    ["Controller", `${controller.model} (${controller.designation})`],
    ["Firmware", firmware === null ? NOT_KNOWN : `${firmware}${raw}`],
    ["Hardware", controller.hardware ?? NOT_KNOWN],
    ["Memory used", memoryPercent === null ? NOT_KNOWN : `${memoryPercent} %`],
    ["Axes", axisLimit === null ? `${axes}; limit ${NOT_KNOWN}` : `${axes} of at most ${axisLimit}`],
    ["Read", day(controller.readOn)],
    ["Leads", leadsLine === null ? "no line" : `line ${leadsLine.code}`],
    ["Also runs", sharedWith.length === 0 ? "no other machine" : sharedWith.join(", ")],
  ];
}
