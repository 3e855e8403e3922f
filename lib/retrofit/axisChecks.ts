/**
 * When a check is passed. Readings are one or more values of the same thing; the worst or their range counts.
 * Upper bounds compare sizes, whatever the sign.
 *
 * confirmed: somebody says yes · zero: nothing was counted · equal: exactly the value found before ·
 * within: off the value found before by at most the limit where one is set, else by a share of that value ·
 * repeats: readings spread by at most the limit and their mean lies within it of the value found before, where one
 * was found · most: at most the limit · notMore: at most a share of the value found before, and at most the limit
 * where one is set · notLess: at least a share of the value found before.
 */
export type PassRule =
  | { readonly kind: "confirmed" }
  | { readonly kind: "zero" }
  | { readonly kind: "equal" }
  | { readonly kind: "within"; readonly share: number }
  | { readonly kind: "repeats"; readonly readings: number }
  | { readonly kind: "most" }
  | {
      readonly kind: "notMore";
      readonly share: number;
      readonly needsLimit: boolean;
      readonly readings: number;
    }
  | { readonly kind: "notLess"; readonly share: number };

export interface AxisCheck {
  readonly id: string;
  readonly title: string;
  /** What is done, and how. */
  readonly how: string;
  /** Unit of the values; null where nothing is measured. */
  readonly unit: string | null;
  readonly rule: PassRule;
  /** Two different people answer for it. */
  readonly twoNames: boolean;
  /** Compared with what the register holds of the motor that will run, old or new, and not with a reading. */
  readonly byRecord?: true;
}

/** Stands in a check for the unit its axis travels in, such as mm. */
export const UNIT_OF_TRAVEL = "unit of travel";

/**
 * What is recorded of each axis before the old drive leaves and after the new one runs, in the order of the work.
 *
 * Common practice, no source; the shares are editable nowhere yet. A plant's own procedure and the law come first.
 */
export const axisChecks: readonly AxisCheck[] = [
  {
    id: "before-power",
    title: "Isolation, earth and polarity before power",
    how: "Measured by a qualified person with the supply locked out.",
    unit: null,
    rule: { kind: "confirmed" },
    twoNames: false,
  },
  {
    id: "identity",
    title: "Part and firmware as ordered",
    how: "Read from the plate and from the drive, compared with the parts list.",
    unit: null,
    rule: { kind: "confirmed" },
    twoNames: false,
  },
  {
    id: "lost-cycles",
    title: "Motion network for one hour",
    how: "Cycles lost and errors counted by the controller, this node.",
    unit: "errors",
    rule: { kind: "zero" },
    twoNames: false,
  },
  {
    id: "counts",
    title: "Feedback counts of one motor revolution",
    how: "Shaft turned by hand, drive not enabled; the sign is that of the record. A new motor has the counts of its own feedback.",
    unit: "counts",
    rule: { kind: "equal" },
    twoNames: false,
    byRecord: true,
  },
  {
    id: "scaling",
    title: "Counts for one unit of travel",
    how: "From gearing and feedback as declared again, against the record.",
    unit: `counts per ${UNIT_OF_TRAVEL}`,
    rule: { kind: "within", share: 0.0005 },
    twoNames: false,
    byRecord: true,
  },
  {
    id: "travel",
    title: "Travel measured over a long move",
    how: "Moved by command, measured at the load with an instrument of its own.",
    unit: UNIT_OF_TRAVEL,
    rule: { kind: "within", share: 0.0005 },
    twoNames: false,
  },
  {
    id: "end-limits",
    title: "End limits, hardware then software",
    how: "Slow approach to each; the right axis stops.",
    unit: null,
    rule: { kind: "confirmed" },
    twoNames: false,
  },
  {
    id: "homing",
    title: "Homing repeats and meets the mark",
    how: "Ten homes, position at the scribed mark read each time.",
    unit: UNIT_OF_TRAVEL,
    rule: { kind: "repeats", readings: 10 },
    twoNames: false,
  },
  {
    id: "holding",
    title: "Drop when the brake takes the load",
    how: "Axes that can fall: brake timing and hold under load.",
    unit: UNIT_OF_TRAVEL,
    rule: { kind: "most" },
    twoNames: true,
  },
  {
    id: "following",
    title: "Following error at production speed",
    how: "Largest over three cycles, against the trace of the old drive.",
    unit: UNIT_OF_TRAVEL,
    rule: { kind: "notMore", share: 1.1, needsLimit: false, readings: 1 },
    twoNames: false,
  },
  {
    id: "torque",
    title: "Effective torque at production speed",
    how: "After 30 minutes of running, share of the rated torque.",
    unit: "% of rated",
    rule: { kind: "most" },
    twoNames: false,
  },
  {
    id: "stopping",
    title: "Stopping distance at full speed and load",
    how: "Ten stops; the longest counts, against the old one and against the distance the guards were placed by.",
    unit: UNIT_OF_TRAVEL,
    rule: { kind: "notMore", share: 1, needsLimit: true, readings: 10 },
    twoNames: true,
  },
  {
    id: "safety",
    title: "Safety functions, each channel",
    how: "By the validation plan of the machine, with loss of power and planted faults, witnessed.",
    unit: null,
    rule: { kind: "confirmed" },
    twoNames: true,
  },
  {
    id: "emergency-stop",
    title: "Emergency stop, guards and restart interlock",
    how: "Each device on this axis's zone.",
    unit: null,
    rule: { kind: "confirmed" },
    twoNames: true,
  },
  {
    id: "backup",
    title: "Backup taken after tuning and restored",
    how: "Restored on a spare or read back and compared.",
    unit: null,
    rule: { kind: "confirmed" },
    twoNames: false,
  },
  {
    id: "rate",
    title: "Production rate over the proving run",
    how: "Two hours or more, against the rate before.",
    unit: "pieces per minute",
    rule: { kind: "notLess", share: 0.98 },
    twoNames: false,
  },
];
