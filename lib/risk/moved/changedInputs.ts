import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";
import type {
  GroupInput,
  InstalledInput,
  LineInput,
  PoolInput,
  StandbyInput,
  StockInput,
} from "@/lib/risk/evaluation";
import { changedLeaves, type Leaf } from "@/lib/risk/moved/changedLeaves";
import type { MovedStep, SnapshotInput } from "@/lib/risk/moved/snapshotInput";

/** What of an input changed; `stock` and `uncounted` go with the state of the lots. */
export type MovedFact =
  | "line"
  | "costPerHour"
  | "bufferHours"
  | "unrecoveredShare"
  | "fixedCost"
  | "costSteps"
  | "units"
  | "standIn"
  | "machinesNeeded"
  | "itemClass"
  | "familyId"
  | "removals"
  | "failures"
  | "unitYears"
  | "stops"
  | `stock:${StockInput["state"]}`
  | `uncounted:${StockInput["state"]}`
  | "poweredOn"
  | "outForRepair"
  | "backOn"
  | "leaving"
  | "leavingKept"
  | "leavesOn"
  | keyof LifecycleDates
  | "leadYears"
  | "turnaroundYears"
  | "yield"
  | "assumption"
  | "asOf";

/** One input that differs between two snapshots. */
export interface ChangedInput {
  readonly step: MovedStep;
  readonly fact: MovedFact;
  /** Null where the input is not of one line, pool or site. */
  readonly lineId: string | null;
  readonly poolId: string | null;
  readonly siteId: string | null;
  /** The class and case of a restoration time, or the name of an assumption. */
  readonly of: string | null;
  readonly before: Leaf;
  readonly after: Leaf;
}

type Place = Partial<Pick<ChangedInput, "lineId" | "poolId" | "siteId" | "of">>;

/** A value of one input under the key that makes it the same input in both snapshots. */
interface Told {
  readonly step: MovedStep;
  readonly fact: MovedFact;
  readonly place: Place;
  readonly value: Leaf;
}

/**
 * The inputs behind each step, in the order of the steps.
 *
 * A count that is not in one of the snapshots is zero there; any other value is null. Of a line or part that is new or
 * gone only that is told, and its counts.
 */
export function changedInputs(before: SnapshotInput, after: SnapshotInput): ChangedInput[] {
  const assumptions = changedLeaves(before.assumptions, after.assumptions).map((leaf) =>
    changed({ step: "assumptions", fact: "assumption", place: { of: leaf.path }, ...leaf }),
  );
  const [was, is] = [tell(before.input), tell(after.input)];
  const known = { before: subjects(before.input), after: subjects(after.input) };
  const rest = [...new Set([...was.keys(), ...is.keys()])].flatMap((key) => {
    const [from, to] = [was.get(key), is.get(key)];
    const told = from ?? to;
    if (!told || (isOfNewOrGone(told, known) && !COUNTS.test(told.fact))) return [];
    const absent = COUNTS.test(told.fact) ? 0 : null;
    const [earlier, later] = [from?.value ?? absent, to?.value ?? absent];
    return Object.is(earlier, later) ? [] : [changed({ ...told, before: earlier, after: later })];
  });
  return inOrder([...rest, ...assumptions]);
}

const COUNTS =
  /^(line|units|standIn|removals|failures|unitYears|stops|stock:|uncounted:|outForRepair|leaving|leavingKept)/;
const ORDER: readonly MovedStep[] = ["corrections", "events", "stock", "dates", "assumptions", "clock"];

function inOrder(list: readonly ChangedInput[]): ChangedInput[] {
  return [...list].sort((a, b) => ORDER.indexOf(a.step) - ORDER.indexOf(b.step));
}

function changed(input: Omit<Told, "value"> & { readonly before: Leaf; readonly after: Leaf }): ChangedInput {
  const { step, fact, place, before, after } = input;
  return { step, fact, lineId: null, poolId: null, siteId: null, of: null, ...place, before, after };
}

function subjects(input: GroupInput): ReadonlySet<string> {
  return new Set([...input.lines.map(({ id }) => id), ...input.pools.map(({ id }) => id)]);
}

function isOfNewOrGone(
  { place }: Told,
  known: { readonly before: ReadonlySet<string>; readonly after: ReadonlySet<string> },
): boolean {
  const id = place.poolId ?? place.lineId ?? null;
  return id !== null && known.before.has(id) !== known.after.has(id);
}

/** All values of an input that are compared, by what makes them the same input. */
function tell(input: GroupInput): Map<string, Told> {
  const all = [
    ...input.lines.flatMap(tellLine),
    ...tellCounts(input),
    ...input.pools.flatMap(tellPool),
    { step: "clock", fact: "asOf", place: {}, value: input.asOf } as const,
  ];
  const out = new Map<string, Told>();
  for (const told of all) {
    const key = JSON.stringify([told.fact, told.place]);
    const seen = out.get(key);
    out.set(key, seen ? { ...told, value: together(seen.value, told.value) } : told);
  }
  return out;
}

/** Counts of one thing at one place are added; of days, the later one stands. */
function together(a: Leaf, b: Leaf): Leaf {
  if (typeof a === "number" && typeof b === "number") return a + b;
  return (a ?? "") > (b ?? "") ? a : b;
}

function tellLine(line: LineInput): Told[] {
  const place = { lineId: line.id, siteId: line.siteId };
  const facts = ["costPerHour", "bufferHours", "unrecoveredShare"] as const;
  return [
    { step: "corrections", fact: "line", place, value: 1 },
    ...facts.map((fact) => ({ step: "corrections", fact, place, value: line[fact] }) as const),
    { step: "corrections", fact: "fixedCost", place, value: line.fixedCost ?? null },
    { step: "corrections", fact: "costSteps", place, value: stepsText(line) },
  ];
}

/** Hours and cost of each step, e.g. `48:10000;72:25000`; null without steps. */
function stepsText({ costSteps = [] }: LineInput): string | null {
  return costSteps.map(({ afterHours, cost }) => `${afterHours}:${cost}`).join(";") || null;
}

function tellCounts({ lines, installed, experience, restorations }: GroupInput): Told[] {
  const sites = new Map(lines.map(({ id, siteId }) => [id, siteId]));
  const events = ["removals", "failures", "unitYears"] as const;
  return [
    ...installed.flatMap((row) => tellInstalled(row, sites.get(row.lineId) ?? null)),
    ...experience.flatMap((seen) =>
      events.map((fact): Told => {
        const place = { poolId: seen.poolId, siteId: seen.siteId };
        return { step: "events", fact, place, value: seen[fact] };
      }),
    ),
    ...restorations.map(({ itemClass, spareAtHand, stops }): Told => {
      const of = `${itemClass}:${spareAtHand ? "with" : "without"}`;
      return { step: "events", fact: "stops", place: { of }, value: stops };
    }),
  ];
}

function tellInstalled(
  { lineId, poolId, units, leaves = [], standby }: InstalledInput,
  siteId: string | null,
): Told[] {
  const place = { lineId, poolId, siteId };
  return [
    { step: "corrections", fact: "units", place, value: units },
    ...(standby ? tellStandby(units, standby).map((told): Told => ({ ...told, place })) : []),
    ...leaves.flatMap((leave): Told[] => [
      { step: "dates", fact: "leaving", place, value: leave.units },
      { step: "dates", fact: "leavingKept", place, value: leave.kept ? leave.units : 0 },
      { step: "dates", fact: "leavesOn", place, value: leave.on },
    ]),
  ];
}

function tellStandby(units: number, { group, needed }: StandbyInput): Omit<Told, "place">[] {
  return [
    { step: "corrections", fact: "standIn", value: units },
    { step: "corrections", fact: "machinesNeeded", value: `${needed} of ${group}` },
  ];
}

function tellPool(pool: PoolInput): Told[] {
  const place = { poolId: pool.id };
  const dates = Object.entries(pool.dates) as [keyof LifecycleDates, string | null][];
  const supply = [
    ...dates,
    ["leadYears", pool.leadYears],
    ["turnaroundYears", pool.repair?.turnaroundYears ?? null],
    ["yield", pool.repair?.yield ?? null],
  ] as const;
  return [
    { step: "corrections", fact: "itemClass", place, value: pool.itemClass },
    { step: "corrections", fact: "familyId", place, value: pool.familyId },
    ...pool.stock.flatMap((lot) => tellLot(pool.id, lot)),
    ...(pool.arrivals ?? []).flatMap(({ on, pieces }): Told[] => [
      { step: "stock", fact: "outForRepair", place, value: pieces },
      { step: "stock", fact: "backOn", place, value: on },
    ]),
    ...supply.map(([fact, value]): Told => ({ step: "dates", fact, place, value })),
  ];
}

function tellLot(poolId: string, { siteId, state, quantity, lastPoweredOn }: StockInput): Told[] {
  const place = { poolId, siteId };
  const counted: Told =
    quantity === null
      ? { step: "stock", fact: `uncounted:${state}`, place, value: 1 }
      : { step: "stock", fact: `stock:${state}`, place, value: quantity };
  return [counted, { step: "stock", fact: "poweredOn", place, value: lastPoweredOn }];
}
