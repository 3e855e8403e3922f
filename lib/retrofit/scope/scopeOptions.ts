import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { Norm } from "@/lib/retrofit/costNorm";
import { buildScope, type Scope, type ScopeQuestion } from "@/lib/retrofit/scope/buildScope";
import { controllerCounts } from "@/lib/retrofit/scope/controllerScope";
import type { ReleasedPart } from "@/lib/retrofit/scope/releasedParts";
import type { ScopeFacts, WindowFact } from "@/lib/retrofit/scope/scopeFacts";
import { addUp, controllerRows, hours } from "@/lib/retrofit/scope/scopeMoney";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { NOTHING, times } from "@/lib/retrofit/scope/spread";
import { fitWindow } from "@/lib/retrofit/scope/windowFit";

/** A value, or why it is not known. */
export type Known<T> = { readonly value: T } | { readonly unknown: string };

/** One way to treat a line; how much loss it leaves is not said here. */
export interface ScopeOption {
  readonly id:
    | "nothing"
    | "care"
    | "stock"
    | "repair"
    | "pool"
    | "controller"
    | "partial"
    | "full"
    | "replace";
  readonly name: string;
  /** What it is good for. */
  readonly purpose: string;
  /** EUR, once. */
  readonly cost: Known<Norm>;
  /** Weeks of work of the persons at work. */
  readonly weeks: Known<Norm>;
  /** Weeks until the slowest part or the contract is here. */
  readonly lead: Known<number>;
  readonly blockers: readonly string[];
  readonly released: readonly ReleasedPart[];
}

interface OptionTerms extends ScopeQuestion {
  readonly facts: ScopeFacts;
  readonly full: Scope;
  readonly window: WindowFact | null;
}

const DAYS_A_WEEK = 5;
const known = <T>(value: T): Known<T> => ({ value });
const unknown = (why: string) => ({ unknown: why });
const NO_UNITS = { blockers: [], released: [] } as const;

/** The ways to treat a line, from doing nothing to replacing it, each with what is known of it. */
export function scopeOptions(terms: OptionTerms): ScopeOption[] {
  return [
    {
      ...{ id: "nothing", name: "Do nothing", ...NO_UNITS },
      purpose: "Run to failure and take the loss as ranked; the yardstick of every other way.",
      ...{ cost: known(NOTHING), weeks: known(NOTHING), lead: known(0) },
    },
    careOption(terms),
    stockOption(terms),
    repairOption(terms),
    {
      ...{ id: "pool", name: "Pool and move spares between sites", ...NO_UNITS },
      purpose: "Buys months at the price of carriage; other sites must keep what they need.",
      cost: unknown("only carriage and customs, not on record"),
      ...{ weeks: known(NOTHING), lead: unknown("the pool board says what a site can spare") },
    },
    controllerOption(terms),
    partialOption(terms),
    scopeOption(terms.full, terms, {
      ...{ id: "full", name: `Convert the whole line to ${terms.target}` },
      purpose: "Ends the dependence on the old drives and sets all of them free for other lines.",
    }),
    {
      ...{ id: "replace", name: "Replace the line, or stop its product", ...NO_UNITS },
      purpose: "Where mechanics or product reach their end anyway.",
      cost: unknown("ask a builder for an offer"),
      ...{ weeks: unknown("by offer"), lead: unknown("by offer") },
    },
  ];
}

/** Weeks the persons at work need for some person-hours. */
function weeksOf(hours: Norm, { plain }: ScopeNorms): Norm {
  return times(hours, 1 / (plain.crews * plain.personsPerCrew * plain.hoursPerDay * DAYS_A_WEEK));
}

function careOption({ full, norms }: OptionTerms): ScopeOption {
  const { spans } = norms;
  const money = addUp(
    [
      hours("Copies of programs", full.controllers.length, spans.backupPerController),
      hours("Fans, batteries, fibre ends", full.axes.length, spans.carePerAxis),
    ],
    norms,
  );
  return {
    ...{ id: "care", name: "Care for data and units", ...NO_UNITS },
    purpose:
      "Tested copies, spares powered up, fans, batteries and fibre ends: shortens stops, prolongs nothing.",
    ...{ cost: known(money.cost), weeks: known(weeksOf(money.hours, norms)), lead: known(0) },
  };
}

const families = (full: Scope, stages: readonly SupplyStage[]): string[] => [
  ...new Set(
    full.axes.flatMap(({ axis: { drive } }) =>
      drive?.family && drive.stage && stages.includes(drive.stage) ? [drive.family] : [],
    ),
  ),
];

function stockOption({ full }: OptionTerms): ScopeOption {
  const shut = families(full, ["orders-shut", "repair-fed", "own-stock"]);
  const leads = full.axes.flatMap(({ axis: { drive } }) =>
    drive?.family && !shut.includes(drive.family) ? (drive.leadWeeksP80 ?? drive.leadWeeks ?? []) : [],
  );
  return {
    ...{ id: "stock", name: "Stock up while it can be ordered", released: [] },
    purpose: "Bridges the time to a conversion; the smallest money where orders are still taken.",
    cost: unknown("depends on how many: see the sheet of the last buy"),
    weeks: known(NOTHING),
    lead: leads.length === 0 ? unknown("no lead time on record") : known(Math.max(...leads)),
    blockers: shut.map((family) => `${family} cannot be ordered from its maker any more`),
  };
}

function repairOption({ full }: OptionTerms): ScopeOption {
  return {
    ...{ id: "repair", name: "Agree on repair or exchange", released: [] },
    purpose: "Makes a returned unit count as a spare after its turn-around.",
    cost: unknown("by offer of a repairer"),
    weeks: known(NOTHING),
    lead: unknown("by offer of a repairer"),
    blockers: families(full, ["own-stock"]).map(
      (family) => `repair of ${family} by its maker has ended; a repairer of unknown standing needs a trial`,
    ),
  };
}

function controllerOption({ full, norms }: OptionTerms): ScopeOption {
  const { spans } = norms;
  const { swapped, raised, racks } = full.counts;
  const { swaps, unread, raises } = controllerCounts(full.controllers);
  const validation = hours("Validation", full.counts.machines, spans.validationPerMachine);
  const money = addUp([...controllerRows(full.counts, norms), validation], norms);
  const isNeeded = swapped[2] + raised[2] + racks[2] > 0;
  const lead = full.orders.find(({ label }) => label === "Controllers")?.leadWeeks ?? null;
  return {
    ...{ id: "controller", name: "Controller or network first", released: [] },
    purpose: isNeeded
      ? `Opens the way: ${swaps} to swap, ${raises} to raise, ${unread} not decided; the old drives run on until their own window.`
      : "Every controller runs the new drives already.",
    cost: known(isNeeded ? money.cost : NOTHING),
    weeks: known(isNeeded ? weeksOf(money.hours, norms) : NOTHING),
    lead: swaps === 0 ? known(0) : lead === null ? unknown("no lead time on record") : known(lead),
    blockers: isNeeded ? ["After the change the old ring must still run: confirm with the maker"] : [],
  };
}

/** The machine with the most axes whose supply is furthest gone, by code among equals. */
function worstMachine({ axes }: Scope): string | null {
  const stageOf = (stage: SupplyStage | null | undefined) =>
    stage === "own-stock" ? 3 : stage === "repair-fed" ? 2 : stage === "orders-shut" ? 1 : 0;
  const worst = Math.max(...axes.map(({ axis }) => stageOf(axis.drive?.stage)));
  const count = new Map<string, number>();
  for (const { axis } of axes)
    if (stageOf(axis.drive?.stage) === worst) count.set(axis.machine, (count.get(axis.machine) ?? 0) + 1);
  const [first] = [...count].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return first?.[0] ?? null;
}

function partialOption(terms: OptionTerms): ScopeOption {
  const { full, facts, target, norms } = terms;
  const machine = worstMachine(full);
  const only = new Set(full.axes.filter(({ axis }) => axis.machine === machine).map(({ axis }) => axis.id));
  const part = buildScope(facts, { target, norms, only });
  const given = {
    id: "partial" as const,
    name: `Convert ${machine ?? "one machine"} and what hangs on its rings`,
    purpose: "Sets drives free for the rest of the line; from then on two buses need two sets of spares.",
  };
  if (part.ok) return scopeOption(part.value, terms, given);
  return {
    ...{ ...given, ...NO_UNITS },
    ...{ cost: unknown("no machine to begin with"), weeks: unknown("as above"), lead: unknown("as above") },
  };
}

function scopeOption(
  scope: Scope,
  { norms, window }: OptionTerms,
  given: Pick<ScopeOption, "id" | "name" | "purpose">,
): ScopeOption {
  const leads = scope.orders.map(({ leadWeeks }) => leadWeeks);
  const knownLeads = leads.filter((weeks) => weeks !== null);
  const isShort = window !== null && fitWindow(scope.work, window, norms).state === "short";
  const named = scope.blockers.filter(({ state }) => state === "blocked").map(({ name }) => name);
  return {
    ...given,
    cost: known(scope.money.cost),
    weeks: known(weeksOf(scope.money.hours, norms)),
    lead: knownLeads.length === 0 ? unknown("no lead time on record") : known(Math.max(...knownLeads)),
    blockers: [...new Set([...named, ...(isShort ? ["Window too short"] : [])])],
    released: scope.released,
  };
}
