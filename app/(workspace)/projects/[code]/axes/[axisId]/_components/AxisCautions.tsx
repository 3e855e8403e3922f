import { Caution } from "@/app/_ui/Caution";

/** What can hurt while an axis is opened, moved and accepted. */
export function AxisCautions() {
  return (
    <Caution title="First motion, stored energy, falling axes">
      Qualified people only; lock out and prove the absence of voltage before anything is touched, by the law
      and rules of the site. First motion at reduced torque and speed with nobody in reach. This sheet keeps
      what was measured; it computes no guard distance and certifies no safety function. Whoever is competent
      for the machine decides.
    </Caution>
  );
}
