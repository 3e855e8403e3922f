/** A decision on the way, with what has to be true before it is taken. */
export interface UsualGate {
  readonly name: string;
  /** Code of the task that may not start before it is passed. */
  readonly guards: string;
  readonly items: readonly string[];
}

/** The two gates before a line is opened. Common practice, no source; the plant's own list and the law come first. */
export const usualGates: readonly UsualGate[] = [
  {
    name: "Readiness",
    guards: "B9",
    items: [
      "Every part of the list is on site, looked over and tried where it can be",
      "Programs converted, compiled and run against a model or on a bench",
      "Survey and values before removal written down for each axis",
      "A named competent person has said whether the change is substantial, and which safety levels it needs",
      "Cutover written hour by hour, with the last hour at which the old system can go back in",
      "Putting the old system back has been tried, not only written",
      "Production has confirmed the days of the shutdown in writing",
      "Permits, lockout plan and qualified persons are named for every shift",
    ],
  },
  {
    name: "Go or no-go",
    guards: "W1",
    items: [
      "Last trace of the old axes taken; copies of programs and parameters read back on another device",
      "Everything of the readiness gate still holds today",
      "Everybody of the first two shifts is on site, with two people for each safety check",
      "Production has handed the line over in writing",
      "Energy is isolated by the lockout plan and tried; absence of voltage is verified by a qualified person",
    ],
  },
];
