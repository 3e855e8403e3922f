import type { Values } from "@/lib/intake/checkRow";
import { given, type RowIntents } from "@/lib/intake/intents/cells";
import { keyOf } from "@/lib/intake/intents/intent";
import { firmwareValue, partValue, textValue } from "@/lib/intake/rowValues";

interface Context {
  readonly rowNumber: number;
  readonly siteOfLine: (lineCode: string) => string | null;
}

/** What a list is called that does not say where it comes from. */
export const PLAIN_SOURCE = "network list";

/**
 * What a row of a network list says: something was seen at an address on a day.
 *
 * It speaks of no controller, unit or place; whether it means one of them is found when both are compared.
 */
export function scanIntents(row: Values, { rowNumber, siteOfLine }: Context): RowIntents {
  const text = (key: string) => textValue(row, key);
  const line = text("lineCode");
  const site = text("siteCode") ?? siteOfLine(line ?? "");
  if (site === null) return { intents: [], problems: [unplaced(line ?? "")] };
  const part = partValue(row, "partNumber");
  const said = whereAndWhen(row);
  const values = given({
    ...{ line, machine: text("machineCode"), name: text("deviceName"), maker: text("maker") },
    ...{ number: part?.base ?? null, revision: part?.revision ?? null },
    firmware: firmwareValue(row, "firmware")?.raw ?? null,
    ...{ serial: text("serial"), status: text("status") },
  });
  return {
    intents: [
      {
        entity: "Sighting",
        key: keyOf(site, ...Object.values(said)),
        parents: { siteId: { entity: "Site", key: site } },
        ...{ values, whenNew: said, rowNumber },
      },
    ],
    problems: [],
  };
}

function whereAndWhen(row: Values) {
  const text = (key: string) => textValue(row, key) ?? "";
  return {
    source: textValue(row, "source") ?? PLAIN_SOURCE,
    network: text("networkName"),
    controller: text("controllerDesignation"),
    slot: text("slot"),
    address: text("address"),
    seenOn: text("seenOn").slice(0, 10),
  };
}

function unplaced(line: string) {
  return {
    field: "lineCode",
    problem: `${line} is no line of a site known here`,
    remedy: "Write the site beside it, or load the asset register first",
  };
}
