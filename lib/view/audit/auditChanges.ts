import { isIsoDate } from "@/lib/kernel/isoDate";
import { TABLE_WORDS } from "@/lib/view/audit/tableWords";
import { NOT_KNOWN } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** One field a change set, in words. */
export interface AuditChange {
  readonly field: string;
  /** Null: it was not there before, or was not kept. */
  readonly from: string | null;
  /** Null: it is not there any more. */
  readonly to: string | null;
}

const MOST_LETTERS = 300;
/** Fields that say why or name rows, which are told elsewhere. */
const APART = /^(reason|why|id|version)$|Id$|Ids$/;

/** What a change set, field by field: only what differs. */
export function auditChanges(before: unknown, after: unknown): AuditChange[] {
  const [was, is] = [fieldsOf(before), fieldsOf(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((key): AuditChange[] => {
    if (APART.test(key)) return [];
    const [from, to] = [valueWords(was.get(key)), valueWords(is.get(key))];
    // Who keeps what stood before keeps only the fields a change was about.
    if (before !== null && before !== undefined && after !== null && after !== undefined && from === to)
      return [];
    return from === null && to === null ? [] : [{ field: fieldWords(key), from, to }];
  });
}

/** The reason a person gave, where the change itself asked for one. */
export function reasonOf(why: string | null, before: unknown, after: unknown): string | null {
  const [was, is] = [fieldsOf(before), fieldsOf(after)];
  const given = [why, is.get("reason"), is.get("why"), was.get("reason"), was.get("why")];
  return given.find((one): one is string => typeof one === "string" && one.trim() !== "") ?? null;
}

function fieldsOf(json: unknown): Map<string, unknown> {
  if (json === null || typeof json !== "object")
    return new Map(json === undefined || json === null ? [] : [["value", json]]);
  if (Array.isArray(json)) return new Map([["rows", json]]);
  return new Map(Object.entries(json));
}

/** `lastPoweredOn` as people read it: Last powered on. */
export function fieldWords(key: string): string {
  const table = TABLE_WORDS[key];
  if (table !== undefined) return table;
  const words = key
    .replaceAll(/([a-z0-9])([A-Z])/g, "$1 $2")
    .replaceAll(/[_-]/g, " ")
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A value as people read it; undefined was not kept and is null here, null is not known. */
export function valueWords(value: unknown): string | null {
  if (value === undefined) return null;
  if (value === null) return NOT_KNOWN;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return textWords(value);
  if (typeof value === "number") return String(value);
  if (Array.isArray(value)) return short(value.length === 0 ? "none" : value.map(inWords).join(", "));
  return short(
    Object.entries(value as object)
      .map(([key, one]) => `${fieldWords(key).toLowerCase()} ${inWords(one)}`)
      .join(", "),
  );
}

const inWords = (value: unknown) => valueWords(value) ?? NOT_KNOWN;

function textWords(text: string): string {
  if (text === "") return "empty";
  if (isIsoDate(text)) return day(text);
  return short(/^[a-z]+(_[a-z]+)+$/.test(text) ? text.replaceAll("_", " ") : text);
}

const short = (text: string) => (text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS)} …` : text);
