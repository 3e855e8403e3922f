import { Caution } from "@/app/_ui/Caution";
import { Notice } from "@/app/_ui/Notice";
import { controllerBlockers, MEMORY_CAUTION_PERCENT } from "@/lib/view/lineControllers";
import type { LineDossier } from "@/lib/view/lineDossier";

/** What stands in the way of new drives on the line's controllers, and what unblocks it. */
export function Blockers({ line }: { readonly line: LineDossier }) {
  const { controllers, firmwareFloor: floor } = line;
  const found = controllerBlockers(controllers, floor);
  const unread = line.machines.filter((machine) => machine.controller === null);
  const clear = found.belowFloor.length + found.memoryTight.length + found.unknownFirmware.length === 0;
  return (
    <>
      {floor === null ? (
        <Notice kind="info" title="No firmware floor recorded">
          Nobody has recorded the level new drives need, so no controller is held against one.
        </Notice>
      ) : null}
      {found.belowFloor.length === 0 ? null : (
        <Notice
          kind="problem"
          title={`Firmware floor: ${found.belowFloor.length} of ${controllers.length} below`}
        >
          {`${list(found.belowFloor)} stand below level ${floor}, which new drives need (common practice, no source). Raise the firmware where the model can reach it; where it cannot, the controller goes first.`}
        </Notice>
      )}
      {found.memoryTight.length === 0 ? null : (
        <Notice
          kind="caution"
          title={`Memory headroom: ${found.memoryTight.length} of ${controllers.length} tight`}
        >
          {`${list(found.memoryTight)} use ${MEMORY_CAUTION_PERCENT} % of their memory or more. A higher firmware level or another drive may not fit (threshold: common practice, no source).`}
        </Notice>
      )}
      {found.unknownFirmware.length === 0 ? null : (
        <Notice kind="info" title={`Not read: ${found.unknownFirmware.length} of ${controllers.length}`}>
          {`The firmware of ${list(found.unknownFirmware)} is not known. It may be below the floor: read it before an order depends on it.`}
        </Notice>
      )}
      {unread.length === 0 ? null : (
        <Notice kind="info" title="No controller recorded">
          {`${list(unread.map((machine) => machine.code))} have no controller on record.`}
        </Notice>
      )}
      {clear && floor !== null && unread.length === 0 ? (
        <p>Every controller of the line is read, at level {floor} or above, with room in its memory.</p>
      ) : (
        <WorkCautions />
      )}
    </>
  );
}

const list = (names: readonly string[]) => names.join(", ");

function WorkCautions() {
  return (
    <Caution title="Work on controllers and drives: qualified electrical persons only">
      <ul className="list-disc pl-5">
        <li>
          Back up program and parameters first, and test that the backup restores. A firmware change can stop
          production and void validations.
        </li>
        <li>
          De-energise, lock out and prove the absence of voltage under national law and site rules. The DC bus
          stays charged for minutes after power-off: read the unit's label, wait, then measure. Vertical axes
          fall; braking resistors are hot.
        </li>
        <li>
          Any change to a safety-related part, stopping behaviour or speed needs a re-assessment and
          validation by a named competent person. A like-for-like swap is not automatically no change.
        </li>
        <li>First motion at reduced torque and speed, with nobody in reach.</li>
      </ul>
    </Caution>
  );
}
