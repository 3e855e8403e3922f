import type { AcceptedController, RuleKind, RuleTerms } from "@/lib/schema/compatibilityRule";

/** A field of the form of a rule; `controllers` and `names` hold one entry a row. */
export interface RuleField {
  readonly name: string;
  readonly label: string;
  readonly type: "text" | "number" | "names" | "controllers" | "fit";
  readonly unit?: string;
  readonly hint?: string;
  /** May stay empty. */
  readonly optional?: true;
}

const controllers: RuleField = {
  ...{ name: "controllers", label: "Controllers that run it", type: "controllers" },
  hint: "One a row: the model and its lowest level, as “Slate 5 from 24”; the model alone runs it at any level.",
};
const level: RuleField = { name: "level", label: "Level", type: "text", hint: "As 24 or 24.011." };
const model: RuleField = { name: "model", label: "Controller model", type: "text" };
const drive: RuleField = { name: "drive", label: "New drive family", type: "text" };
const fit: RuleField = { name: "fit", label: "What holds", type: "fit" };

/** What the form asks for, by kind. */
export const RULE_FIELDS: {
  readonly [K in RuleKind]: readonly (RuleField & { name: keyof RuleTerms[K] & string })[];
} = {
  controller_floor: [
    { name: "families", label: "New drive families", type: "names", hint: "One a row." },
    { ...controllers, name: "controllers" },
  ],
  ceiling: [
    { ...model, name: "model" },
    { ...level, name: "level", label: "Highest level" },
  ],
  memory_growth: [
    { ...model, name: "model" },
    { ...level, name: "level", label: "Raised to level" },
    { name: "factor", label: "Memory is multiplied by", type: "number" },
    { name: "cautionPercent", label: "Caution from", type: "number", unit: "%" },
    { name: "blockedPercent", label: "Blocked above", type: "number", unit: "%" },
  ],
  card_lost: [
    { ...level, name: "level", label: "From level" },
    { name: "card", label: "Bus card family", type: "text" },
    { name: "letter", label: "Runs from hardware letter", type: "text", hint: "As C or C3." },
    { name: "racks", label: "Rack family behind it", type: "text" },
  ],
  motor_match: [
    { name: "motor", label: "Motor family", type: "text" },
    { ...drive, name: "drive" },
    { ...fit, name: "fit" },
    {
      ...{ name: "upToKw", label: "Up to power", type: "number", unit: "kW", optional: true },
      hint: "Empty is any power; above it the motor must be sized anew.",
    },
  ],
  feedback_match: [
    { name: "feedback", label: "Kind of feedback, as in the axis list", type: "text" },
    { ...drive, name: "drive" },
    { ...fit, name: "fit" },
  ],
  hardware_revision: [
    { name: "family", label: "Drive family", type: "text" },
    { name: "revision", label: "From hardware", type: "text", hint: "As C3." },
    { ...controllers, name: "controllers" },
  ],
  ring_whole: [],
  axis_ceiling: [
    { ...model, name: "model" },
    { name: "axes", label: "Drives at most", type: "number", unit: "axes" },
    {
      ...{ name: "olderThan", label: "While its hardware is older than", type: "text", optional: true },
      hint: "As C or C3; empty is any hardware.",
    },
    {
      ...{ name: "belowLevel", label: "While its level is below", type: "text", optional: true },
      hint: "As 24; empty is any level.",
    },
  ],
};

const rows = (text: string) =>
  text
    .split("\n")
    .map((row) => row.trim())
    .filter((row) => row !== "");

function readController(row: string): AcceptedController {
  const [model = "", level] = row.split(/\s+from\s+/i);
  return { model, level: level ?? null };
}

const READ: Readonly<Record<RuleField["type"], (text: string) => unknown>> = {
  text: (text) => text,
  fit: (text) => text,
  number: (text) => (text === "" ? null : Number(text)),
  names: rows,
  controllers: (text) => rows(text).map(readController),
};

/** The terms a filled form gives; the schema of the kind checks them. */
export function termsOf(kind: RuleKind, textOf: (name: string) => string): Record<string, unknown> {
  return Object.fromEntries(
    RULE_FIELDS[kind].map(({ name, type, optional }) => {
      const text = textOf(name).trim();
      return [name, optional && text === "" ? null : READ[type](text)];
    }),
  );
}

/** What a field shows of stored terms. */
export function fieldText({ name, type }: RuleField, terms: Readonly<Record<string, unknown>>): string {
  const value = terms[name];
  if (value === null || value === undefined) return "";
  if (type === "names") return (value as readonly string[]).join("\n");
  if (type !== "controllers") return String(value);
  return (value as readonly AcceptedController[])
    .map((one) => (one.level === null ? one.model : `${one.model} from ${one.level}`))
    .join("\n");
}
