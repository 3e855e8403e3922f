import type { Values } from "@/lib/intake/checkRow";
import { given, storedNumber } from "@/lib/intake/intents/cells";
import type { Kept } from "@/lib/intake/intents/intent";
import { booleanValue, textValue } from "@/lib/intake/rowValues";

/**
 * What a row of the axis survey says of cables, travel and homing.
 *
 * Each group the row fills gets its evidence: measured on the day of the survey, documented without one.
 */
export function axisFactValues(row: Values): Record<string, Kept> {
  return {
    ...graded(row, "powerCable", cable(row, "power")),
    ...graded(row, "feedbackCable", cable(row, "feedback")),
    ...graded(row, "travel", {
      travel: storedNumber(row, "travel", 4),
      hardLow: storedNumber(row, "hardLow", 4),
      hardHigh: storedNumber(row, "hardHigh", 4),
      softLow: storedNumber(row, "softLow", 4),
      softHigh: storedNumber(row, "softHigh", 4),
    }),
    ...graded(row, "homing", {
      homing: textValue(row, "homing"),
      homeOffset: storedNumber(row, "homeOffset", 4),
    }),
  };
}

function cable(row: Values, which: "power" | "feedback"): Record<string, Kept> {
  return {
    [`${which}Cable`]: textValue(row, `${which}Cable`),
    [`${which}CableLength`]: storedNumber(row, `${which}CableLength`, 2),
    [`${which}CableInChain`]: booleanValue(row, `${which}CableInChain`),
  };
}

function graded(row: Values, group: string, fields: Readonly<Record<string, Kept>>): Record<string, Kept> {
  const said = given(fields);
  if (Object.keys(said).length === 0) return {};
  const on = textValue(row, "surveyedOn");
  return {
    ...said,
    [`${group}Evidence`]: on === null ? "documented" : "measured",
    ...given({ [`${group}ReadOn`]: on }),
  };
}
