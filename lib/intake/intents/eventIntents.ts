import type { Values } from "@/lib/intake/checkRow";
import type { Catalogue } from "@/lib/intake/intents/catalogue";
import { given, type RowIntents, storedNumber } from "@/lib/intake/intents/cells";
import { driveDesignation, motorDesignation } from "@/lib/intake/intents/designations";
import { type Entity, type Intent, type Kept, keyOf } from "@/lib/intake/intents/intent";
import { meantPart } from "@/lib/intake/intents/partIntents";
import { hoursBetween } from "@/lib/intake/localTime";
import { booleanValue, textValue } from "@/lib/intake/rowValues";

interface Context {
  readonly catalogue: Catalogue;
  readonly rowNumber: number;
  readonly zoneOfSite: (siteCode: string) => string | null;
}

/**
 * What a row of the event register says: one failure or removal.
 *
 * The time stays on the site's own clock; whoever stores it knows the site's zone.
 */
export function eventIntents(row: Values, context: Context): RowIntents {
  const meant = meantPart(
    row,
    {
      partField: "partNumber",
      makerField: "maker",
      itemClass: textValue(row, "itemClass"),
      description: null,
    },
    context,
  );
  const intent = eventIntent(row, meant.key, context);
  return { intents: [...meant.intents, intent], problems: meant.problems };
}

function eventIntent(row: Values, partKey: string | null, { rowNumber, zoneOfSite }: Context): Intent {
  const site = textValue(row, "siteCode") ?? "";
  const source = textValue(row, "source") ?? "work order";
  const reference = textValue(row, "reference") ?? "";
  const downtimeHours = stopOf(row, zoneOfSite(site));
  return {
    entity: "Event",
    key: keyOf(site, source, reference),
    parents: {
      siteId: { entity: "Site", key: site },
      ...placeParents(row),
      ...parent("partId", "Part", partKey),
    },
    values: given({
      kind: textValue(row, "kind"),
      itemClass: textValue(row, "itemClass"),
      happenedAt: textValue(row, "happenedAt"),
      downtimeHours,
      logisticHours: storedNumber(row, "waitingHours", 2),
      spareAtHand: booleanValue(row, "spareAtHand"),
      text: textValue(row, "text"),
      commonCause: textValue(row, "commonCause"),
      setAside: textValue(row, "setAside"),
    }),
    // Without a finding the unit left its place, and no more is known.
    whenNew: { source, reference, kind: "removal" satisfies Kept },
    rowNumber,
  };
}

/** The stop in hours; from start to end by the site's zone, where the row gives no length of its own. */
function stopOf(row: Values, zone: string | null): number | null {
  const written = storedNumber(row, "downtimeHours", 2);
  const [start, end] = [textValue(row, "happenedAt"), textValue(row, "endedAt")];
  if (written === null || start === null || end === null || zone === null) return written;
  const byClock = (Date.parse(`${end}:00Z`) - Date.parse(`${start}:00Z`)) / 3_600_000;
  // A length that differs from the clock's was given by the row itself.
  if (Math.abs(written - byClock) > 0.01) return written;
  return Number(hoursBetween(start, end, zone).toFixed(2));
}

function placeParents(row: Values): Intent["parents"] {
  const line = textValue(row, "lineCode");
  const machine = textValue(row, "machineCode");
  const position = textValue(row, "position");
  const machineKey = line !== null && machine !== null ? keyOf(line, machine) : null;
  return {
    ...parent("lineId", "Line", line),
    ...parent("machineId", "Machine", machineKey),
    ...parent("positionId", "Position", positionKey(machineKey, position, textValue(row, "itemClass"))),
  };
}

/** An axis named with the class of what failed is the place of that axis's drive or motor. */
function positionKey(
  machineKey: string | null,
  position: string | null,
  itemClass: string | null,
): string | null {
  if (machineKey === null || position === null) return null;
  if (position.includes("-")) return keyOf(machineKey, position);
  if (itemClass === "drive") return keyOf(machineKey, driveDesignation(position));
  if (itemClass === "motor") return keyOf(machineKey, motorDesignation(position));
  return keyOf(machineKey, position);
}

function parent(field: string, entity: Entity, key: string | null): Intent["parents"] {
  return key === null ? {} : { [field]: { entity, key } };
}
