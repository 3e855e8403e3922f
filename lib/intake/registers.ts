import type { Field } from "@/lib/intake/field";
import { ASSET_FIELDS } from "@/lib/intake/fields/assetFields";
import { AXIS_FIELDS } from "@/lib/intake/fields/axisFields";
import { BACKUP_FIELDS } from "@/lib/intake/fields/backupFields";
import { CONTACT_FIELDS } from "@/lib/intake/fields/contactFields";
import { EVENT_FIELDS } from "@/lib/intake/fields/eventFields";
import { LIFECYCLE_FIELDS } from "@/lib/intake/fields/lifecycleFields";
import { SCAN_FIELDS } from "@/lib/intake/fields/scanFields";
import { STOCK_FIELDS } from "@/lib/intake/fields/stockFields";
import { WINDOW_FIELDS } from "@/lib/intake/fields/windowFields";

export type RegisterKey =
  | "assets"
  | "axes"
  | "stock"
  | "events"
  | "lifecycle"
  | "backups"
  | "contacts"
  | "windows"
  | "scans";

/**
 * One kind of file the group keeps: its fields and what must hold between the cells of a row.
 * Plain data, safe to hand to a page.
 */
export type Register = {
  label: string;
  description: string;
  fields: readonly Field[];
  /** Of each group at least one field must be filled in a row. */
  oneOf: readonly (readonly string[])[];
  /** When the first of a pair is filled, the second must be. */
  together: readonly (readonly [string, string])[];
  /** When the first of a pair is filled and the second is not, a person is told; the row is taken. */
  expected?: readonly (readonly [string, string])[];
  /** Dates or numbers that cannot fall from left to right; a fall is a warning. */
  ascending: readonly (readonly string[])[];
  /** The same, where a fall makes no sense at all and keeps the row out. */
  ordered: readonly (readonly string[])[];
  /**
   * What makes a row of the file one thing: two rows alike in all of these are a duplicate. Of fields parted by "|"
   * the first that is filled counts.
   */
  identity: readonly string[];
};

/** A register of the import page. */
export type KeyedRegister = Register & { key: RegisterKey };

/** The registers a file can be read into, by key. */
export const REGISTERS: Readonly<Record<RegisterKey, KeyedRegister>> = {
  assets: {
    key: "assets",
    label: "Assets",
    description:
      "Sites, lines and machines with their cost per hour and their controllers, one machine a row.",
    fields: ASSET_FIELDS,
    oneOf: [],
    together: [
      ["machineName", "machineCode"],
      ["machineRetiredOn", "machineCode"],
      ["controllerDesignation", "machineCode"],
      ["controllerModel", "controllerDesignation"],
      ["firmware", "controllerDesignation"],
      ["memoryPercent", "controllerDesignation"],
      ["costFixed", "costPerHour"],
      ["costOwner", "costPerHour"],
      ["controllerHardware", "controllerDesignation"],
      ["controllerAxisLimit", "controllerDesignation"],
      ["leadsLine", "controllerDesignation"],
      ["panel", "machineCode"],
      ["panelName", "panel"],
      ["panelLocation", "panel"],
    ],
    ascending: [["costApprovedOn", "costValidUntil"]],
    ordered: [],
    identity: ["siteCode", "lineCode", "machineCode", "panel"],
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
      ["networkProfileFamily", "networkName"],
      ["travel", "travelUnit"],
      ["hardLow", "travelUnit"],
      ["hardHigh", "travelUnit"],
      ["softLow", "travelUnit"],
      ["softHigh", "travelUnit"],
      ["homeOffset", "travelUnit"],
    ],
    ascending: [
      ["hardLow", "softLow"],
      ["softHigh", "hardHigh"],
    ],
    ordered: [
      ["hardLow", "hardHigh"],
      ["softLow", "softHigh"],
    ],
    identity: ["lineCode", "machineCode", "axisCode", "designation"],
  },
  stock: {
    key: "stock",
    label: "Stock",
    description: "What lies on the shelves, one part in one bin and one state a row.",
    fields: STOCK_FIELDS,
    oneOf: [["partNumber", "storeroomNumber"]],
    together: [],
    ascending: [],
    ordered: [],
    identity: ["siteCode", "bin", "maker", "partNumber|storeroomNumber", "revision", "state"],
  },
  events: {
    key: "events",
    label: "Events",
    description: "Failures and removals from work orders and stop logs, one event a row.",
    fields: EVENT_FIELDS,
    oneOf: [],
    together: [["position", "machineCode"]],
    ascending: [],
    ordered: [["waitingHours", "downtimeHours"]],
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
      ["powerKw", "partNumber"],
      ["profileFamily", "partNumber"],
    ],
    expected: [["price", "pricedOn"]],
    ascending: [
      ["noticeOn", "lastOrderOn", "lastShipOn"],
      ["orderByOn", "lastOrderOn"],
      ["leadWeeks", "leadWeeksP80"],
    ],
    ordered: [],
    identity: ["maker", "family", "partNumber", "source", "checkedOn"],
  },
  backups: {
    key: "backups",
    label: "Copies of controllers",
    description:
      "Which copies of programs, parameters and operator panels are kept, one a row: where they lie, never a password.",
    fields: BACKUP_FIELDS,
    oneOf: [],
    together: [],
    ascending: [],
    ordered: [["takenOn", "verifiedOn"]],
    identity: ["siteCode", "controllerDesignation", "kind", "takenOn", "keptAt"],
  },
  contacts: {
    key: "contacts",
    label: "Numbers to call",
    description:
      "Functions to call at a line or site, one a row. Numbers of duty phones, never of persons: privacy law guards those.",
    fields: CONTACT_FIELDS,
    oneOf: [],
    together: [],
    ascending: [],
    ordered: [],
    identity: ["siteCode", "lineCode", "role"],
  },
  windows: {
    key: "windows",
    label: "Shutdown windows",
    description:
      "Days on which a line, or without one a whole site, stands still for work, one stretch a row.",
    fields: WINDOW_FIELDS,
    oneOf: [],
    together: [],
    ascending: [],
    ordered: [["startsOn", "endsOn"]],
    identity: ["siteCode", "lineCode", "startsOn"],
  },
  scans: {
    key: "scans",
    label: "Network lists",
    description:
      "What a passive list of a motion network or controller saw, one device a row. A list changes no record by itself: where it and the register differ, a person decides. Ebbline scans nothing.",
    fields: SCAN_FIELDS,
    oneOf: [["siteCode", "lineCode"]],
    together: [],
    ascending: [],
    ordered: [],
    identity: [
      "siteCode",
      "lineCode",
      "source",
      "networkName",
      "controllerDesignation",
      "slot",
      "address",
      "seenOn",
    ],
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
