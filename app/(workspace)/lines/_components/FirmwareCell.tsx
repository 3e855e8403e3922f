import {
  type ControllerFacts,
  controllerBlockers,
  firmwareWords,
  leadController,
} from "@/lib/view/lineControllers";

interface FirmwareCellProps {
  readonly controllers: readonly ControllerFacts[];
  readonly floor: number | null;
}

/** The leading controller with its levels, and a mark when one of the line stands below the floor. */
export function FirmwareCell({ controllers, floor }: FirmwareCellProps) {
  const lead = leadController(controllers);
  if (lead === null) return <span className="text-ink-3">not known</span>;
  const below = controllerBlockers(controllers, floor).belowFloor.length;
  return (
    <span className="inline-grid gap-0.5">
      <span>
        {lead.model} <span className="text-ink-2">level {firmwareWords(lead)}</span>
      </span>
      {below === 0 ? null : (
        <span className="justify-self-start border border-worse px-1 text-xs">
          <span aria-hidden="true">▼ </span>
          Firmware floor {floor}: {below} of {controllers.length} below
        </span>
      )}
    </span>
  );
}
