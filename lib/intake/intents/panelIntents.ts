import type { Values } from "@/lib/intake/checkRow";
import { given } from "@/lib/intake/intents/cells";
import { type Intent, keyOf } from "@/lib/intake/intents/intent";
import { textValue } from "@/lib/intake/rowValues";

/** The panel a row names, in its machine; none when it names none. */
export function panelIntents(row: Values, machineKey: string, rowNumber: number): Intent[] {
  const designation = textValue(row, "panel");
  if (designation === null) return [];
  return [
    {
      entity: "Panel",
      key: keyOf(machineKey, designation),
      parents: { machineId: { entity: "Machine", key: machineKey } },
      values: given({ name: textValue(row, "panelName"), location: textValue(row, "panelLocation") }),
      whenNew: { designation },
      rowNumber,
    },
  ];
}
