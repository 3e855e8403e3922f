import { Caution } from "@/app/_ui/Caution";

/** What a retrofit must not be started without. */
export function ProjectCautions() {
  return (
    <>
      <Caution title="Electrical work: isolate, lock out, prove dead">
        Only qualified persons. De-energise, lock out, verify the absence of voltage, and follow national law
        and the rules of the site. A retrofit changes protective devices and fault levels: check whether
        arc-flash study and labels still hold.
      </Caution>
      <Caution title="Stored energy: wait, then measure">
        The DC link of a drive stays charged for minutes after power-off: read the label of the unit and
        measure. Shared links feed back from other drives, braking resistors stay hot, vertical axes fall,
        spinning motors generate voltage, springs and air stay loaded.
      </Caution>
      <Caution title="Safety functions: assess and validate again">
        Any change to a safety-related part, to stopping, speed or stopping distance needs a new assessment
        and validation; a like-for-like swap is not automatically “no change”. Ebbline records this; it
        calculates and certifies no performance level. First motion at reduced torque and speed, nobody in
        reach; never copy gains and limits blindly between unlike drives.
      </Caution>
      <Caution title="Conformity: is this a substantial modification?">
        A retrofit may be one (in the European Union under Regulation (EU) 2023/1230 from 20 January 2027;
        elsewhere there are similar duties). A named competent person decides and signs. Motor sizing, panel
        design and short-circuit rating may need a licensed engineer.
      </Caution>
    </>
  );
}
