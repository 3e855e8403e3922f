import { type CutoverCaution, cutoverCautions } from "@/lib/schema/cutover";

interface CautionWords {
  readonly title: string;
  readonly text: string;
}

/** What a step of a cutover must not be begun without; the local rules and the law come first. */
export const CUTOVER_CAUTIONS: Readonly<Record<CutoverCaution, CautionWords>> = {
  lockout: {
    title: "Lock out and prove dead",
    text: "Qualified persons only. Switch off, lock out, tag, verify the absence of voltage at the place of work. Protective devices and fault levels change with the new drives: check the arc-flash study and its labels.",
  },
  stored: {
    title: "Wait for stored energy, then measure",
    text: "The DC link stays charged for minutes: read the label of the unit, wait, measure. Shared links feed back from other drives, braking resistors stay hot, springs and air stay loaded, turning motors generate voltage.",
  },
  vertical: {
    title: "Secure vertical axes before the motor lets go",
    text: "Prop or pin every axis that can fall before power, brake or motor is taken off it. A holding brake alone secures nobody.",
  },
  first_motion: {
    title: "First motion slow, weak, and nobody in reach",
    text: "Torque limit first, then reduced speed, one axis at a time, with the stop in hand and nobody in reach. Gains and limits of the old drive do not fit the new one.",
  },
  validation: {
    title: "Safety functions are validated before production",
    text: "Competent persons test each function on each channel by the validation plan, witnessed, before anybody works at the machine. A changed stop, speed or stopping distance needs a new assessment. Ebbline keeps the names; it certifies nothing.",
  },
  backup: {
    title: "Copy first, then change",
    text: "Read what runs from the controller itself, not from the server, and keep it where the network is not needed.",
  },
};

/** Tells whether a text names a caution. */
export function isCutoverCaution(key: string): key is CutoverCaution {
  return (cutoverCautions as readonly string[]).includes(key);
}
