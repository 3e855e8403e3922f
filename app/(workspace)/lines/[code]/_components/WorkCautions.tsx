import { Caution } from "@/app/_ui/Caution";

/** What holds for any work on controllers and drives. */
export function WorkCautions() {
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
