import type { ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { type Verdict, verdictOf } from "@/lib/retrofit/compatibility/verdict";
import { firmwareWord, meetsLevel, parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { isRevisionFrom } from "@/lib/retrofit/hardwareRevision";

type Terms = RuleOf<"axis_ceiling">["terms"];

/** Which controllers a ceiling holds for: `A Slate 5 of hardware older than C and below level 24`. */
export function ceilingWords({ model, olderThan, belowLevel }: Terms): string {
  const asked = [
    ...(olderThan === null ? [] : [`of hardware older than ${olderThan}`]),
    ...(belowLevel === null ? [] : [`below level ${belowLevel}`]),
  ];
  return ["A", model, asked.join(" and ")].filter((word) => word !== "").join(" ");
}

/**
 * Does the controller drive more axes than its model can? Null when the ceiling is not about it.
 *
 * The ceiling holds while the hardware is older and the level lower than the rule says. The lower of the ceiling and
 * the limit recorded of this very controller binds. Axes are counted on all its machines: a retrofit gives each
 * axis another drive, so their number stays.
 *
 * Unknown, never clear: when whether the ceiling holds hangs on what nobody has read and no limit is recorded, and
 * when a machine has no axis on record.
 */
export function judgeAxisCeiling(rule: RuleOf<"axis_ceiling">, controller: ControllerFacts): Verdict | null {
  const { terms } = rule;
  if (controller.model !== terms.model) return null;
  const holds = isHeld(terms, controller);
  if (holds === false) return null;
  const { designation, axesInAll, axisLimit, evidence, hardware, level } = controller;
  return verdictOf(rule, {
    ...{ blocker: "Axis ceiling", ...outcome(terms, controller, holds) },
    facts: [
      { text: `${designation}: ${axesWords(axesInAll)}`, evidence },
      { text: `hardware ${hardware ?? "not known"}, level ${firmwareWord(level)}`, evidence },
      ...(axisLimit === null
        ? []
        : [{ text: `limit recorded of this controller: ${axisLimit} axes`, evidence }]),
    ],
  });
}

/** Whether the ceiling holds for the controller; null hangs on what nobody has read. */
function isHeld({ olderThan, belowLevel }: Terms, { hardware, level }: ControllerFacts): boolean | null {
  const newer = olderThan === null ? false : isRevisionFrom(hardware, olderThan);
  const met = belowLevel === null ? "no" : meetsLevel(level, parseFirmwareLevel(belowLevel));
  if (newer === true || met === "yes") return false;
  return newer === null || met === "undecidable" ? null : true;
}

type Found = Pick<Verdict, "state" | "arithmetic" | "unblocks">;

function outcome(terms: Terms, controller: ControllerFacts, holds: true | null): Found {
  const { axesInAll, axisLimit } = controller;
  const said = `${ceilingWords(terms)} drives at most ${terms.axes} axes`;
  if (holds === null && axisLimit === null)
    return {
      state: "unknown",
      arithmetic: `${said}; whether that holds here is not known. It has ${axesWords(axesInAll)}.`,
      unblocks: readWords(terms, controller),
    };
  const limit = Math.min(holds ? terms.axes : Number.POSITIVE_INFINITY, axisLimit ?? terms.axes);
  const from = limit === axisLimit ? `It is recorded to drive at most ${limit} axes` : said;
  if (axesInAll === null)
    return {
      state: "unknown",
      arithmetic: `${from}; how many it has is not known, because a machine of it has no axis on record.`,
      unblocks: "Survey the axes of its machines.",
    };
  return counted({ axes: axesInAll, limit, from }, terms);
}

interface Counted {
  readonly axes: number;
  readonly limit: number;
  readonly from: string;
}

function counted({ axes, limit, from }: Counted, terms: Terms): Found {
  const said = `${from}; it has ${axes}`;
  if (axes < limit)
    return {
      state: "clear",
      arithmetic: `${said}: ${limit} − ${axes} = ${limit - axes} free.`,
      unblocks: null,
    };
  if (axes === limit)
    return {
      state: "caution",
      arithmetic: `${said}: none is free for a new axis beside an old one.`,
      unblocks: "Convert axis for axis, or free an axis first.",
    };
  const over = axes - limit;
  return {
    state: "blocked",
    arithmetic: `${said}: ${axes} − ${limit} = ${over} too many.`,
    unblocks: `Replace the controller, move ${axesWords(over)} to a second one${waysOut(terms)}.`,
  };
}

/** What lifts the ceiling itself. */
function waysOut({ model, olderThan, belowLevel }: Terms): string {
  const hardware = olderThan === null ? "" : `, or fit a ${model} of hardware ${olderThan} or later`;
  return belowLevel === null ? hardware : `${hardware}, or raise it to ${belowLevel}`;
}

function axesWords(axes: number | null): string {
  if (axes === null) return "a number of axes that is not known";
  return axes === 1 ? "1 axis" : `${axes} axes`;
}

/** What has to be read before the ceiling can be held against the controller. */
function readWords({ olderThan }: Terms, { hardware }: ControllerFacts): string {
  const open =
    olderThan !== null && isRevisionFrom(hardware, olderThan) === null ? "hardware letter" : "level";
  return `Read the ${open} off the controller, or record how many axes it can drive.`;
}
