import { belowFloor, type ControllerFacts, firmwareWords, leadController } from "@/lib/view/lineControllers";

/** The leading controller with its levels, and a mark when one of the line stands below the floor. */
export function FirmwareCell({ controllers }: { readonly controllers: readonly ControllerFacts[] }) {
  const lead = leadController(controllers);
  if (lead === null) return <span className="text-ink-3">not known</span>;
  const below = belowFloor(controllers);
  const unread = controllers.filter((one) => one.firmware === null).length;
  return (
    <span className="inline-grid gap-0.5 whitespace-nowrap">
      <span>
        {lead.model} <span className="text-ink-2">level {firmwareWords(lead)}</span>
      </span>
      <span className="text-ink-2 text-xs">
        {below === 0 ? null : (
          <span
            className="mr-1.5 border border-worse px-1 text-ink"
            title={`${below} of ${controllers.length} controllers do not run the new drives as they are`}
          >
            <span aria-hidden="true">▼ </span>
            Firmware floor: {below} of {controllers.length}
          </span>
        )}
        {unread === 0 ? null : `${unread} not read`}
      </span>
    </span>
  );
}
