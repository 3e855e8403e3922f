import { err, ok, type Result } from "@/lib/kernel/result";
import type { JudgedController } from "@/lib/retrofit/compatibility";
import type { Norm } from "@/lib/retrofit/costNorm";
import { type AxisScope, type ChosenAxes, chooseAxes, scopeAxis } from "@/lib/retrofit/scope/axisScope";
import { blockersOf, judgeForTarget, type ScopeBlocker } from "@/lib/retrofit/scope/controllerScope";
import { type OrderRow, orderList } from "@/lib/retrofit/scope/orderList";
import { type ReleasedPart, releasedParts } from "@/lib/retrofit/scope/releasedParts";
import { daysBetweenStarts, type Schedule, schedule } from "@/lib/retrofit/scope/schedule";
import { countScope, type ScopeCounts } from "@/lib/retrofit/scope/scopeCounts";
import type { ScopeAxis, ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import { addUp, controllerRows, goodsRows, hourRows, type ScopeMoney } from "@/lib/retrofit/scope/scopeMoney";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { PARTS_NEEDED, scopeTasks, WINDOW_STARTS } from "@/lib/retrofit/scope/scopeTasks";
import { refuseLoops } from "@/lib/retrofit/scope/successorFor";
import { type WindowWork, windowWork } from "@/lib/retrofit/scope/windowFit";

/** Which family of drives to convert to, and which axes are asked for; without them, the whole line. */
export interface ScopeQuestion {
  readonly target: string;
  readonly norms: ScopeNorms;
  readonly only?: ReadonlySet<string>;
}

/** What converting a line, or some of its axes, takes. */
export interface Scope {
  readonly target: string;
  readonly axes: readonly AxisScope[];
  readonly staying: readonly ScopeAxis[];
  /** Nodes of the same rings on other lines: they are converted too, and are not in the figures. */
  readonly elsewhere: readonly ScopeAxis[];
  readonly rings: readonly { readonly name: string; readonly axes: number }[];
  readonly controllers: readonly JudgedController[];
  /** Worst first. */
  readonly blockers: readonly ScopeBlocker[];
  readonly counts: ScopeCounts;
  readonly money: ScopeMoney;
  readonly work: WindowWork;
  readonly schedule: Schedule;
  /** Working days from the start to the first day of the window. */
  readonly beforeWindow: Norm;
  /** Typical working days from the day parts have to be on site to the first day of the window. */
  readonly partsAhead: number;
  readonly orders: readonly OrderRow[];
  readonly released: readonly ReleasedPart[];
}

/** Why there is no scope. */
export type ScopeRefusal =
  | { readonly kind: "loop"; readonly numbers: readonly string[] }
  | { readonly kind: "nothing" };

/**
 * Works out what converting a line to a family of drives takes, from what is on record.
 *
 * @returns The scope; refused when parts follow themselves, with their numbers, or when no axis is to be converted.
 */
export function buildScope(facts: ScopeFacts, question: ScopeQuestion): Result<Scope, ScopeRefusal> {
  const { target, norms, only } = question;
  const chosen = chooseAxes(facts, target, only);
  if (chosen.converted.length === 0) return err({ kind: "nothing" });
  const loops = refuseLoops(partsReplaced(facts, chosen), facts);
  if (!loops.ok) return err({ kind: "loop", numbers: loops.error.numbers });
  const axes = chosen.converted.map((one) => scopeAxis(one, target, facts));
  const controllers = judgeForTarget(facts, chosen.converted, target);
  const counts = countScope(facts, axes, controllers);
  const work = windowWork(counts, norms);
  const orders = orderList(facts, axes, counts);
  const tasks = scopeTasks({ counts, norms, work, slowest: slowestOf(orders) });
  return ok({
    ...{ target, axes, controllers, counts, work, orders },
    ...{ staying: chosen.staying, elsewhere: chosen.elsewhere, rings: ringsOf(chosen) },
    blockers: blockersOf(controllers, axes),
    money: addUp(
      [...hourRows(counts, norms), ...controllerRows(counts, norms), ...goodsRows(counts, axes, norms)],
      norms,
    ),
    ...planOf(tasks),
    released: releasedParts(axes, norms),
  });
}

function partsReplaced(facts: ScopeFacts, { converted }: ChosenAxes): string[] {
  const machines = new Set(converted.map(({ axis }) => axis.machine));
  return [
    ...converted.flatMap(({ axis }) => axis.drive?.id ?? []),
    ...facts.items.filter(({ machine }) => machines.has(machine)).flatMap(({ part }) => part?.id ?? []),
  ];
}

function planOf(tasks: Parameters<typeof schedule>[0]) {
  const planned = schedule(tasks);
  if (!planned.ok) throw new RangeError(`tasks wait for each other: ${planned.error.ids.join(", ")}`);
  const before = schedule(tasks.filter(({ phase }) => phase === "prepare" || phase === "build"));
  return {
    schedule: planned.value,
    beforeWindow: before.ok ? before.value.total : planned.value.total,
    partsAhead: daysBetweenStarts(tasks, PARTS_NEEDED, WINDOW_STARTS) ?? 0,
  };
}

function slowestOf(orders: readonly OrderRow[]) {
  const [slowest] = orders
    .filter(({ leadWeeks }) => leadWeeks !== null)
    .sort((a, b) => (b.leadWeeks ?? 0) - (a.leadWeeks ?? 0));
  if (!slowest) return null;
  const careful = slowest.leadWeeks ?? 0;
  return { typical: slowest.part?.leadWeeks ?? careful, careful };
}

function ringsOf({ converted, elsewhere }: ChosenAxes): Scope["rings"] {
  const axes = new Map<string, number>();
  for (const ring of [...converted.map(({ axis }) => axis.ring), ...elsewhere.map((axis) => axis.ring)])
    if (ring !== null) axes.set(ring, (axes.get(ring) ?? 0) + 1);
  return [...axes].map(([name, count]) => ({ name, axes: count })).sort((a, b) => (a.name < b.name ? -1 : 1));
}
