import { type Assumptions, type assumptionNotes, likelyAssumptions } from "@/lib/risk/assumptions";
import type { ItemClass } from "@/lib/risk/evaluation";
import { type AssumptionRange, assumptionRanges } from "@/lib/schema/assumptions";
import type { StorageBand } from "@/lib/spares/usableCount";

/** One number of a set of assumptions. */
export interface AssumptionField {
  /** Names from the outside in, joined by points. */
  readonly path: string;
  /** Values that are only changed together share a group. */
  readonly group: string;
  readonly note: keyof typeof assumptionNotes;
  /** Null holds for every class. */
  readonly itemClass: ItemClass | null;
  /** Which number of the assumption it is; empty when there is only one. */
  readonly part: string;
  readonly unit: string;
  readonly range: AssumptionRange;
  /** Why it is not changed here; null when it may be. */
  readonly fixed: string | null;
  /** Stored as the logarithm, shown as the number. */
  readonly logarithm: boolean;
}

type Draft = Pick<AssumptionField, "path" | "note" | "unit" | "range"> &
  Partial<Pick<AssumptionField, "part" | "fixed" | "logarithm">>;

const r = assumptionRanges;

function fieldsOf(place: string, itemClass: ItemClass | null, drafts: readonly Draft[]): AssumptionField[] {
  return drafts.map(({ path, ...draft }) => ({
    ...{ itemClass, part: "", fixed: null, logarithm: false },
    ...draft,
    path: `${place}${path}`,
    group: `${place}${draft.note}`,
  }));
}

function ladderDrafts(itemClass: ItemClass): Draft[] {
  const { ladder } = likelyAssumptions.classes[itemClass];
  return ladder.flatMap(({ source }, i): Draft[] => [
    {
      ...{ path: `ladder.${i}.availability`, note: "ladder", unit: "chance", range: r.share },
      part: `${source}: availability`,
      fixed: i === ladder.length - 1 ? "The last source is always there." : null,
    },
    {
      ...{ path: `ladder.${i}.hours`, note: "ladder", unit: "h", range: r.sourceHours },
      part: `${source}: time`,
    },
  ]);
}

function storageDrafts(itemClass: ItemClass): Draft[] {
  const { storage } = likelyAssumptions.classes[itemClass];
  return storage.map((_, i) => ({
    ...{ path: `storage.${i}.works`, note: "storage", unit: "chance", range: r.share },
    part: bandName(storage, i),
  }));
}

function bandName(bands: readonly StorageBand[], place: number): string {
  const from = bands[place - 1]?.untilYears ?? 0;
  const until = bands[place]?.untilYears ?? null;
  if (until !== null) return `${from} to ${until} years unpowered`;
  return place === 0 ? "unpowered for any time" : `over ${from} years unpowered`;
}

function classFields(itemClass: ItemClass): AssumptionField[] {
  return fieldsOf(`classes.${itemClass}.`, itemClass, [
    { path: "removalRate", note: "removalRate", unit: "per unit-year", range: r.removalRate },
    { path: "rateUnitYears", note: "rateUnitYears", unit: "unit-years", range: r.rateUnitYears },
    { path: "noFaultFoundShare", note: "noFaultFoundShare", unit: "share", range: r.noFaultFoundShare },
    {
      ...{ path: "withSpare.mu", note: "withSpare", unit: "h", range: r.medianHours },
      ...{ part: "median", logarithm: true },
    },
    { path: "withSpare.sigma", note: "withSpare", part: "spread", unit: "of ln h", range: r.spread },
    { path: "withSpare.weight", note: "withSpare", part: "weight", unit: "stops", range: r.stops },
    ...ladderDrafts(itemClass),
    { path: "withoutSpare.sigma", note: "withoutSpare", part: "spread", unit: "of ln h", range: r.spread },
    { path: "withoutSpare.weight", note: "withoutSpare", part: "weight", unit: "stops", range: r.stops },
    { path: "leadYears", note: "leadYears", unit: "years", range: r.leadYears },
    ...storageDrafts(itemClass),
    { path: "unknownStorageWorks", note: "unknownStorageWorks", unit: "chance", range: r.share },
  ]);
}

const MONTHS = "Tables and charts of the product are laid out for it.";

const EVIDENCE = ["measured", "documented", "inferred", "assumed"] as const;

const groupFields = fieldsOf("", null, [
  { path: "transferHours", note: "transferHours", unit: "h", range: r.transferHours },
  { path: "unprovenWorks", note: "unprovenWorks", unit: "share", range: r.share },
  { path: "removedUntestedWorks", note: "removedUntestedWorks", unit: "share", range: r.share },
  { path: "releaseWorks", note: "releaseWorks", unit: "share", range: r.share },
  { path: "repairWorks", note: "repairWorks", unit: "share", range: r.share },
  { path: "weights.stage", note: "weights", part: "stage", unit: "share of 1", range: r.share },
  { path: "weights.spares", note: "weights", part: "spares", unit: "share of 1", range: r.share },
  { path: "weights.repair", note: "weights", part: "repair", unit: "share of 1", range: r.share },
  { path: "tolerableBeyondBuffer", note: "tolerableBeyondBuffer", unit: "h", range: r.tolerableBeyondBuffer },
  { path: "horizonMonths", note: "horizonMonths", unit: "months", range: r.months, fixed: MONTHS },
  { path: "months", note: "months", unit: "months", range: r.months, fixed: MONTHS },
  { path: "unidentifiedNoSpare", note: "unidentifiedNoSpare", unit: "chance", range: r.share },
  { path: "undatedOrderable", note: "undatedOrderable", unit: "chance", range: r.share },
  ...EVIDENCE.map((part): Draft => {
    const path = `costSpread.${part}`;
    return { path, part, note: "costSpread", unit: "of ln EUR", range: r.spread };
  }),
  { path: "uncountedMost", note: "uncountedMost", unit: "pieces", range: r.pieces },
  { path: "discountRate", note: "discountRate", unit: "share a year", range: r.discountRate },
]);

/** Every number of a set of assumptions, those of the whole group first. */
export const assumptionFields: readonly AssumptionField[] = [
  ...groupFields,
  ...(Object.keys(likelyAssumptions.classes) as ItemClass[]).flatMap(classFields),
];

/** The number of a field in a set, as it is shown. */
export function assumptionValue(values: Assumptions, { path, logarithm }: AssumptionField): number {
  const found = path
    .split(".")
    .reduce<unknown>((inner, name) => (inner as Readonly<Record<string, unknown>>)[name], values);
  if (typeof found !== "number") throw new RangeError(`path must lead to a number, got ${path}`);
  // exp(ln x) misses x by a last digit.
  return logarithm ? Number(Math.exp(found).toPrecision(12)) : found;
}

/** The set with numbers put in by path; a path that is not in the list is a caller's mistake. */
export function withAssumptions(values: Assumptions, changes: Readonly<Record<string, number>>): Assumptions {
  const fields = new Map(assumptionFields.map((field) => [field.path, field]));
  return Object.entries(changes).reduce<Assumptions>((set, [path, value]) => {
    const field = fields.get(path);
    if (!field) throw new RangeError(`path must be of an assumption, got ${path}`);
    return put(set, path.split("."), field.logarithm ? Math.log(value) : value) as Assumptions;
  }, values);
}

function put(inner: unknown, [name, ...rest]: readonly string[], value: number): unknown {
  if (name === undefined) return value;
  if (Array.isArray(inner))
    return inner.map((entry: unknown, i) => (String(i) === name ? put(entry, rest, value) : entry));
  const record = inner as Readonly<Record<string, unknown>>;
  return { ...record, [name]: put(record[name], rest, value) };
}
