import type { Field } from "@/lib/intake/field";
import { ASSET_FIELDS } from "@/lib/intake/fields/assetFields";
import { AXIS_FIELDS } from "@/lib/intake/fields/axisFields";
import { EVENT_FIELDS } from "@/lib/intake/fields/eventFields";
import { LIFECYCLE_FIELDS } from "@/lib/intake/fields/lifecycleFields";
import { STOCK_FIELDS } from "@/lib/intake/fields/stockFields";

export type RegisterKey = "assets" | "axes" | "stock" | "events" | "lifecycle";

/**
 * One kind of file the group keeps: its fields and what must hold between the cells of a row.
 * Plain data, safe to hand to a page.
 */
export type Register = {
  key: RegisterKey;
  label: string;
  description: string;
  fields: readonly Field[];
  /** Of each group at least one field must be filled in a row. */
  oneOf: readonly (readonly string[])[];
  /** When the first of a pair is filled, the second must be. */
  together: readonly (readonly [string, string])[];
  /** Dates or numbers that cannot fall from left to right; a fall is a warning. */
  ascending: readonly (readonly string[])[];
  /** What makes a row of the file one thing: two rows alike in all of these are a duplicate. */
  identity: readonly string[];
};

/** The registers a file can be read into, by key. */
export const REGISTERS: Readonly<Record<RegisterKey, Register>> = {
  assets: {
    key: "assets",
    label: "Assets",
    description:
      "Sites, lines and machines with their cost per hour and their controllers, one machine a row.",
    fields: ASSET_FIELDS,
    oneOf: [],
    together: [
      ["machineName", "machineCode"],
      ["controllerDesignation", "machineCode"],
      ["controllerModel", "controllerDesignation"],
      ["firmware", "controllerDesignation"],
      ["memoryPercent", "controllerDesignation"],
      ["costFixed", "costPerHour"],
      ["costOwner", "costPerHour"],
    ],
    ascending: [["costApprovedOn", "costValidUntil"]],
    identity: ["siteCode", "lineCode", "machineCode"],
  },
  axes: {
    key: "axes",
    label: "Axis survey",
    description:
      "One axis a row with its drive and motor, or, where a designation is given instead of an axis, one other item.",
    fields: AXIS_FIELDS,
    oneOf: [["axisCode", "designation"]],
    together: [
      ["designation", "itemClass"],
      ["networkKind", "networkName"],
      ["ringOrder", "networkName"],
      ["driveSerial", "drivePart"],
      ["motorSerial", "motorPart"],
      ["itemSerial", "itemPart"],
      ["unitsPerLoadRev", "travelUnit"],
    ],
    ascending: [],
    identity: ["lineCode", "machineCode", "axisCode", "designation"],
  },
  stock: {
    key: "stock",
    label: "Stock",
    description: "What lies on the shelves, one part in one bin and one state a row.",
    fields: STOCK_FIELDS,
    oneOf: [],
    together: [],
    ascending: [],
    identity: ["siteCode", "bin", "maker", "partNumber", "revision", "state"],
  },
  events: {
    key: "events",
    label: "Events",
    description: "Failures and removals from work orders and stop logs, one event a row.",
    fields: EVENT_FIELDS,
    oneOf: [],
    together: [["position", "machineCode"]],
    ascending: [["waitingHours", "downtimeHours"]],
    identity: ["siteCode", "source", "reference"],
  },
  lifecycle: {
    key: "lifecycle",
    label: "Supply dates",
    description: "What makers say about supply, price, lead time and repair, one family or part a row.",
    fields: LIFECYCLE_FIELDS,
    oneOf: [["family", "partNumber"]],
    together: [
      ["price", "currency"],
      ["price", "partNumber"],
      ["leadWeeks", "partNumber"],
      ["successor", "partNumber"],
    ],
    ascending: [
      ["noticeOn", "lastOrderOn", "lastShipOn"],
      ["orderByOn", "lastOrderOn"],
      ["leadWeeks", "leadWeeksP80"],
    ],
    identity: ["maker", "family", "partNumber", "source", "checkedOn"],
  },
};

/** Narrows a word from outside (an address, a form) to a register's key. */
export function isRegisterKey(word: string): word is RegisterKey {
  return Object.hasOwn(REGISTERS, word);
}

/** The field of a register by key, or null when there is none. */
export function findField(register: Register, key: string): Field | null {
  return register.fields.find((field) => field.key === key) ?? null;
}
