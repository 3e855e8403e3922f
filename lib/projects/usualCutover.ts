import type { CutoverCaution } from "@/lib/schema/cutover";

/** A step many cutovers have; hours are those of one machine with about twelve axes. */
export interface UsualStep {
  readonly title: string;
  readonly afterHours: number;
  readonly hours: number;
  /** Function that does it. */
  readonly who: string;
  readonly needs: string;
  readonly caution: CutoverCaution | "";
}

/**
 * The steps a cutover usually has, to start a plan from and change. Common practice, no source; hours are guesses to be
 * replaced by those of the factory test.
 */
export const USUAL_CUTOVER: readonly UsualStep[] = [
  {
    ...{ title: "Go or no-go: parts, people, permits, fall-back kit on the spot", afterHours: 0, hours: 0.5 },
    ...{ who: "Project lead", needs: "Readiness gate passed, window confirmed by production", caution: "" },
  },
  {
    ...{ title: "Last traces at production speed, then copy what runs", afterHours: 0.5, hours: 1.5 },
    ...{ who: "Controls engineer", needs: "Line runs; a medium to keep the copies on", caution: "backup" },
  },
  {
    ...{ title: "Stop, secure falling axes, lock out, prove dead", afterHours: 2, hours: 1 },
    ...{ who: "Electrician in charge", needs: "Locks, tags, tester, props and pins", caution: "lockout" },
  },
  {
    ...{ title: "Wait and measure the DC links, take the old drives out, label and box each", afterHours: 3 },
    ...{ hours: 6, who: "Electricians", needs: "Labels, boxes, one sheet for each unit", caution: "stored" },
  },
  {
    ...{ title: "Change motors and cables", afterHours: 5, hours: 8, who: "Mechanics" },
    ...{ needs: "Lifting gear, props under falling axes", caution: "vertical" },
  },
  {
    ...{
      title: "Fit the new panel, wire, check wire by wire",
      afterHours: 9,
      hours: 12,
      who: "Electricians",
    },
    ...{ needs: "Drawings as built in the workshop", caution: "lockout" },
  },
  {
    ...{ title: "Tests before power: earth, insulation, polarity", afterHours: 21, hours: 2 },
    ...{ who: "Electrician in charge", needs: "Instruments within their calibration", caution: "lockout" },
  },
  {
    ...{
      title: "Power up, network, firmware as ordered",
      afterHours: 23,
      hours: 3,
      who: "Controls engineer",
    },
    ...{ needs: "Program as frozen after the factory test", caution: "stored" },
  },
  {
    ...{ title: "First motion axis by axis, direction, scaling, limits, homing", afterHours: 26, hours: 8 },
    ...{
      who: "Controls engineer, integrator",
      needs: "Axis records before removal",
      caution: "first_motion",
    },
  },
  {
    ...{ title: "Tune, dry cycle from slow to full speed", afterHours: 34, hours: 6 },
    ...{ who: "Controls engineer, integrator", needs: "Traces of the old drives", caution: "first_motion" },
  },
  {
    ...{ title: "Stopping distances and safety functions, witnessed", afterHours: 40, hours: 6 },
    ...{ who: "Machine-safety engineer", needs: "Validation plan, second person", caution: "validation" },
  },
  {
    ...{
      title: "Copy after tuning, put it back on a spare",
      afterHours: 46,
      hours: 1,
      who: "Controls engineer",
    },
    ...{ needs: "Spare controller", caution: "backup" },
  },
  {
    ...{ title: "Trial production, rate and quality against before", afterHours: 47, hours: 4 },
    ...{ who: "Production, quality", needs: "Material, operators of the shift", caution: "" },
  },
  {
    ...{ title: "Hand over to the shift, list what is open", afterHours: 51, hours: 1, who: "Project lead" },
    ...{ needs: "Night shift trained, numbers to call posted", caution: "" },
  },
];
