import type { IsoDate } from "@/lib/kernel/isoDate";
import { type Assumptions, type ClassAssumptions, likelyAssumptions } from "@/lib/risk/assumptions";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import type { StorageBand } from "@/lib/spares/usableCount";

/** The sets that come with the product; `own` is what a group states itself. */
export type ProductKind = Exclude<AssumptionChoice["kind"], "own">;

interface Lean {
  /** Rates, hours, lead times and the way from another site, as a multiple of the likely ones. */
  readonly times: number;
  /** Chance of working after each storage band, for items that age and for those that do not. */
  readonly ageing: readonly number[];
  readonly steady: readonly number[];
  /** Added to the availability of an approved alternate and of the open market. */
  readonly sources: number;
}

/** Sources whose availability leans; the others only differ in hours. */
const LEANING_SOURCES: ReadonlySet<string> = new Set(["approved alternate", "open market"]);

function leanClass(likely: ClassAssumptions, lean: Lean): ClassAssumptions {
  const chances = agesOnShelf(likely) ? lean.ageing : lean.steady;
  const storage = likely.storage.map(
    (band, i): StorageBand => ({ ...band, works: chances[i] ?? band.works }),
  );
  return {
    ...likely,
    removalRate: round(likely.removalRate * lean.times),
    withSpare: { ...likely.withSpare, mu: likely.withSpare.mu + Math.log(lean.times) },
    ladder: likely.ladder.map((step) => ({
      ...step,
      hours: round(step.hours * lean.times),
      availability: LEANING_SOURCES.has(step.source)
        ? round(Math.min(1, Math.max(0, step.availability + lean.sources)))
        : step.availability,
    })),
    leadYears: round(likely.leadYears * lean.times),
    storage,
    unknownStorageWorks: storage.at(-1)?.works ?? likely.unknownStorageWorks,
  };
}

/** Keeps products of short decimals short. */
const round = (value: number): number => Number(value.toPrecision(4));

function leanClasses(lean: Lean): Assumptions["classes"] {
  const classes = Object.entries(likelyAssumptions.classes) as [ItemClass, ClassAssumptions][];
  return Object.fromEntries(
    classes.map(([itemClass, likely]) => [itemClass, leanClass(likely, lean)]),
  ) as unknown as Assumptions["classes"];
}

/**
 * What a cautious person would assume: rates, hours and lead times half as large again, sources and storage worse.
 *
 * The spans of rates, the weights of records and the score are those of the likely set. Own choice, no source.
 */
export const carefulAssumptions: Assumptions = {
  ...likelyAssumptions,
  classes: leanClasses({
    ...{ times: 1.5, sources: -0.1 },
    ...{ ageing: [0.95, 0.88, 0.75, 0.5], steady: [0.93] },
  }),
  transferHours: 48,
  releaseWorks: 0.5,
  repairWorks: 0.45,
  unidentifiedNoSpare: 0.8,
  undatedOrderable: 0.25,
};

/** What a hopeful person would assume: rates, hours and lead times two thirds, sources and storage better; no source. */
export const boldAssumptions: Assumptions = {
  ...likelyAssumptions,
  classes: leanClasses({
    ...{ times: 2 / 3, sources: 0.1 },
    ...{ ageing: [0.99, 0.97, 0.92, 0.85], steady: [0.99] },
  }),
  transferHours: 20,
  unprovenWorks: 0.5,
  removedUntestedWorks: 0.3,
  releaseWorks: 0.8,
  repairWorks: 0.75,
  unidentifiedNoSpare: 0.25,
  undatedOrderable: 0.75,
};

/** One of the product's own sets with its version; the version rises when a value of it changes. */
export interface ProductSet {
  readonly kind: ProductKind;
  readonly version: number;
  readonly changedOn: IsoDate;
  readonly values: Assumptions;
}

const first = { version: 1, changedOn: "2026-11-25" };

/** The product's own sets, from the most careful. */
export const productSets: Readonly<Record<ProductKind, ProductSet>> = {
  careful: { kind: "careful", ...first, values: carefulAssumptions },
  likely: { kind: "likely", ...first, values: likelyAssumptions },
  bold: { kind: "bold", ...first, values: boldAssumptions },
};

/** Whether an item of the class ages on the shelf: its chance of working falls with the years unpowered. */
export function agesOnShelf({ storage }: Pick<ClassAssumptions, "storage">): boolean {
  return storage.length > 1;
}

/** The same by the name of the class; which classes age is the same in every set. */
export function classAgesOnShelf(itemClass: ItemClass): boolean {
  return agesOnShelf(likelyAssumptions.classes[itemClass]);
}
