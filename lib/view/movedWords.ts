import { assumptionNotes } from "@/lib/risk/assumptions";
import type { ChangedInput, MovedFact } from "@/lib/risk/moved/changedInputs";
import { OTHER_SITES } from "@/lib/risk/moved/seenFrom";
import type { StockState } from "@/lib/spares/usableCount";
import { itemClassName, partLabel } from "@/lib/view/linePart";
import type { ToldInput } from "@/lib/view/moved";
import { NOT_KNOWN, plainNumber, significant } from "@/lib/view/number";
import { stockStateName } from "@/lib/view/partShelf";
import { day, hours, leadTime } from "@/lib/view/time";

/** Names by id, of what the reader may see. */
export interface MovedNames {
  readonly parts: Readonly<Record<string, string>>;
  readonly families: Readonly<Record<string, string>>;
  readonly sites: Readonly<Record<string, string>>;
  readonly lines: Readonly<Record<string, string>>;
}

type Value = ChangedInput["before"];

const number = (value: Value) => (typeof value === "number" ? plainNumber(value) : NOT_KNOWN);
const date = (value: Value) => day(typeof value === "string" ? value : null);
const own = (value: Value) => (value === null ? NOT_KNOWN : String(value));
const numeric = (write: (value: number | null) => string) => (value: Value) =>
  write(typeof value === "number" ? value : null);
const percent = numeric((value) => (value === null ? NOT_KNOWN : `${plainNumber(value * 100)} %`));
const euros = numeric((value) => (value === null ? NOT_KNOWN : `€ ${plainNumber(value)}`));

/** `48:10000;72:25000` as `€ 10 000 after 48 h, € 25 000 after 72 h`. */
function costSteps(value: Value): string {
  if (typeof value !== "string") return "none";
  return value
    .split(";")
    .map((step) => {
      const [after = "", cost = ""] = step.split(":");
      return `${euros(Number(cost))} after ${hours(Number(after))}`;
    })
    .join(", ");
}

type Words = readonly [what: string, write: (value: Value) => string];

const FACTS: Readonly<Record<Exclude<MovedFact, `stock:${string}` | `uncounted:${string}`>, Words>> = {
  line: ["line", (value) => (value === 0 ? "not there" : "there")],
  costPerHour: ["cost of an hour's stop", euros],
  bufferHours: ["buffer", numeric(hours)],
  unrecoveredShare: ["share overtime cannot recover", percent],
  fixedCost: ["fixed cost of a stop", (value) => (value === null ? "none" : euros(value))],
  costSteps: ["cost steps", costSteps],
  units: ["units installed", number],
  standIn: ["of them on machines others can stand in for", number],
  machinesNeeded: ["machines needed", (value) => (value === null ? "all" : own(value))],
  itemClass: ["class", own],
  familyId: ["family", own],
  removals: ["removals in five years", number],
  failures: ["failures in five years", number],
  unitYears: [
    "unit-years in service",
    numeric((value) => (value === null ? NOT_KNOWN : significant(value, 4))),
  ],
  stops: ["stops on record", number],
  poweredOn: ["last power-up", date],
  outForRepair: ["pieces out for repair", number],
  backOn: ["last piece due back from repair", date],
  leaving: ["units that leave at retrofits", number],
  leavingKept: ["of them kept as spares", number],
  leavesOn: ["last unit leaves on", date],
  noticeOn: ["notice", date],
  lastOrderOn: ["last order", date],
  lastShipOn: ["last ship", date],
  repairUntilOn: ["repair until", date],
  orderByOn: ["own order-by day", date],
  checkedOn: ["source read on", date],
  leadYears: ["lead time", numeric(leadTime)],
  turnaroundYears: ["repair turnaround", numeric(leadTime)],
  yield: ["repair yield", percent],
  assumption: ["assumption", own],
  asOf: ["as-of day", date],
};

function wordsOf(fact: MovedFact): Words {
  const [kind, state = ""] = fact.split(":");
  const name = () => stockStateName(state as StockState).toLowerCase();
  if (kind === "stock") return [`pieces ${name()}`, number];
  if (kind === "uncounted") return [`lots not counted, ${name()}`, number];
  return FACTS[fact as keyof typeof FACTS];
}

/** The changed inputs in words, by step and subject; unit-years, which every day moves, are told in one row. */
export function movedWords(inputs: readonly ChangedInput[], names: MovedNames): ToldInput[] {
  const years = inputs.filter(({ fact }) => fact === "unitYears");
  const rest = inputs.filter(({ fact }) => fact !== "unitYears").map((input) => tell(input, names));
  const all = [...rest, ...(years.length > 0 ? [tellYears(years)] : [])];
  return all.sort((a, b) => (a.subject === b.subject ? 0 : a.subject < b.subject ? -1 : 1));
}

function tell(input: ChangedInput, names: MovedNames): ToldInput {
  const [what, write] = wordsOf(input.fact);
  const named = (value: Value) =>
    input.fact === "familyId" && typeof value === "string" ? (names.families[value] ?? value) : value;
  return {
    step: input.step,
    subject: subjectOf(input, names),
    what,
    before: write(named(input.before)),
    after: write(named(input.after)),
    href: hrefOf(input, names),
  };
}

function subjectOf(input: ChangedInput, names: MovedNames): string {
  const of = input.of ?? "";
  if (input.fact === "asOf") return "Everything";
  if (input.fact === "assumption") return assumptionName(of);
  return input.fact === "stops" ? stopsName(of) : placeName(input, names);
}

function placeName({ lineId, poolId, siteId }: ChangedInput, names: MovedNames): string {
  const part = poolId === null ? null : partLabel(poolId, names.parts[poolId]);
  if (lineId !== null) {
    const line = names.lines[lineId] ?? "a line no longer kept";
    return part === null ? line : `${part} on ${line}`;
  }
  if (siteId === null) return part ?? "";
  if (siteId === OTHER_SITES) return `${part} at other sites`;
  return `${part} at ${names.sites[siteId] ?? "a site no longer kept"}`;
}

function hrefOf({ lineId, poolId }: ChangedInput, names: MovedNames): string | null {
  const line = lineId === null ? undefined : names.lines[lineId];
  if (line !== undefined) return `/lines/${line}`;
  return poolId !== null && poolId in names.parts ? `/parts/${poolId}` : null;
}

function stopsName(of: string): string {
  const [itemClass = "", spare] = of.split(":");
  const name = partLabel(itemClass, undefined).replace("Unidentified ", "");
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}, ${spare === "with" ? "spare at hand" : "no spare"}`;
}

/** `classes.drive.leadYears` in the words of the list of assumptions. */
function assumptionName(path: string): string {
  const steps = path.split(".");
  const inClass = steps[0] === "classes" ? steps[1] : undefined;
  const [key = "", ...inner] = inClass === undefined ? steps : steps.slice(2);
  const title = key in assumptionNotes ? assumptionNotes[key as keyof typeof assumptionNotes].title : key;
  const within = inner.length > 0 ? `, ${inner.join(" ")}` : "";
  return inClass === undefined
    ? `${title}${within}`
    : `${title}, ${itemClassName(inClass as Parameters<typeof itemClassName>[0])}${within}`;
}

function tellYears(years: readonly ChangedInput[]): ToldInput {
  const sum = (side: "before" | "after") =>
    significant(
      years.reduce((total, input) => total + Number(input[side] ?? 0), 0),
      5,
    );
  const places = years.length === 1 ? "1 part and site" : `${plainNumber(years.length)} parts and sites`;
  return {
    step: "events",
    subject: `Unit-years in service, ${places}`,
    what: "sum over the five-year window",
    before: sum("before"),
    after: sum("after"),
    href: null,
  };
}
