import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { err, type Result } from "@/lib/kernel/result";
import type { Norm } from "@/lib/retrofit/costNorm";
import { buildScope, type Scope, type ScopeRefusal } from "@/lib/retrofit/scope/buildScope";
import { type ScopeBlocker, worstFirst } from "@/lib/retrofit/scope/controllerScope";
import { type OrderRow, orderBy } from "@/lib/retrofit/scope/orderList";
import type { ScopeFacts, WindowFact } from "@/lib/retrofit/scope/scopeFacts";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import type { Known } from "@/lib/retrofit/scope/scopeOptions";
import { type TargetChoice, targetChoices } from "@/lib/retrofit/scope/targetChoices";
import { fitWindow, type WindowFit } from "@/lib/retrofit/scope/windowFit";
import { money, moneySpan } from "@/lib/view/format";
import { plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

/** What the page asks: a family and a window, as they stand in the address. */
export interface ScopeAsked {
  readonly target: string | undefined;
  readonly window: string | undefined;
}

/** A window with how the work fits into it. */
export interface FittedWindow {
  readonly window: WindowFact;
  readonly fit: WindowFit;
}

/** A part to order with its last day. */
export interface DatedOrder extends OrderRow {
  readonly orderBy: IsoDate | null;
}

/** Everything the page shows. */
export interface ScopeView {
  readonly targets: readonly TargetChoice[];
  readonly target: string;
  readonly scope: Result<Scope, ScopeRefusal>;
  readonly windows: readonly FittedWindow[];
  readonly window: FittedWindow | null;
}

const DAYS_A_WEEK = 5;

/** Works out the page: the family asked for or the one most follow, the window asked for or the first that fits. */
export function scopeView(
  { facts, windows }: { readonly facts: ScopeFacts; readonly windows: readonly WindowFact[] },
  asked: ScopeAsked,
  norms: ScopeNorms,
): ScopeView {
  const targets = targetChoices(facts);
  const target = (targets.find(({ family }) => family === asked.target) ?? targets[0])?.family ?? null;
  if (target === null)
    return { targets, target: "", scope: err({ kind: "nothing" }), windows: [], window: null };
  const scope = buildScope(facts, { target, norms });
  const fitted = scope.ok
    ? windows.map((window) => ({ window, fit: fitWindow(scope.value.work, window, norms) }))
    : [];
  const window =
    fitted.find((one) => one.window.id === asked.window) ??
    fitted.find(({ fit }) => fit.state === "fits") ??
    fitted[0] ??
    null;
  return { targets, target, scope, windows: fitted, window };
}

/** What stands in the way, the window among it; worst first. */
export function allBlockers(scope: Scope, window: FittedWindow | null): ScopeBlocker[] {
  const fit = window?.fit.state ?? "unknown";
  if (fit === "fits") return [...scope.blockers];
  const own: ScopeBlocker = {
    ...{ name: "Window too short", state: fit === "short" ? "blocked" : "unknown", where: [], rule: null },
    words: window === null ? "No window is on record." : fitWords(scope, window),
    unblocks:
      fit === "short"
        ? "Split the work by rings over several windows, put the controllers first, or plan more crews."
        : "Agree on the usable hours with production.",
  };
  return [...scope.blockers, own].sort(worstFirst);
}

/** How the work and a window meet, in one sentence. */
export function fitWords({ work }: Pick<Scope, "work">, { window, fit }: FittedWindow): string {
  const days = (value: number) => plainNumber(value, Number.isInteger(value) ? 0 : 1);
  const needs = `Needs ${days(work.days)} working days (${plainNumber(work.planned)} hours, enough four times in five)`;
  if (fit.usable === null || fit.plannable === null || fit.left === null || fit.usableDays === null)
    return `${needs}; the usable hours of ${window.name} are not known.`;
  const has = `${window.name} has ${days(fit.usableDays)} usable days (${plainNumber(fit.usable)} hours), of which ${plainNumber(fit.plannable)} hours may be planned`;
  return fit.state === "fits"
    ? `${needs}; ${has}: ${plainNumber(fit.left)} hours are left over.`
    : `${needs}; ${has}: ${plainNumber(-fit.left)} hours too short.`;
}

/** The first step a person has to take, as a headline. */
export function firstStep(scope: Scope, window: FittedWindow | null): string {
  const { swapped, raised } = scope.counts;
  if (swapped[0] > 0) return "Controller first";
  if (swapped[2] > 0) return "Read the controllers first";
  if (raised[2] > 0) return "Firmware first";
  if (window?.fit.state === "short") return "Split over several windows";
  return "Ready to be planned";
}

/** Day the parts have to be on site, and the last day to begin, for a window. */
export function windowDays(scope: Scope, { window }: FittedWindow) {
  const before = (workingDays: number) =>
    addDays(window.startsOn, -Math.ceil((workingDays * 7) / DAYS_A_WEEK));
  return {
    neededOn: before(scope.partsAhead),
    beginBy: before(scope.beforeWindow[1]),
    beginByCareful: before(scope.beforeWindow[2]),
  };
}

/** The parts to order, each with its last day for a window; without one no day is known. */
export function datedOrders(scope: Scope, window: FittedWindow | null, norms: ScopeNorms): DatedOrder[] {
  const neededOn = window && windowDays(scope, window).neededOn;
  return scope.orders.map((order) => ({
    ...order,
    orderBy: neededOn && orderBy(neededOn, order.leadWeeks, norms.plain),
  }));
}

/** Three values as `typical (low–high)`, or one where they agree. */
export function normWords([low, typical, high]: Norm, places = 0): string {
  const number = (value: number) => plainNumber(value, Number.isInteger(value) ? 0 : places);
  if (low === high) return number(typical);
  return `${number(typical)} (${number(low)}–${number(high)})`;
}

/** Money as its typical value with its ends, or one figure where they agree. */
export function moneyNorm([low, typical, high]: Norm): string {
  return low === high ? money(typical) : moneySpan({ low, mean: typical, high });
}

/** A value in words, or why it is not known. */
export function knownWords<T>(one: Known<T>, words: (value: T) => string): string {
  return "value" in one ? words(one.value) : `not known: ${one.unknown}`;
}

/** The parts to order as rows of a file, heads first. */
export function orderRows(orders: readonly DatedOrder[]): (string | number | null)[][] {
  return [
    [
      "what",
      "part number",
      "pieces low",
      "pieces typical",
      "pieces high",
      "price EUR",
      "priced on",
      "lead weeks",
      "order by",
    ],
    ...orders.map(({ label, part, quantity, leadWeeks, orderBy: last }) => [
      ...[label, part?.number ?? null, ...quantity],
      ...[part?.price ?? null, part?.pricedOn ?? null, leadWeeks, last],
    ]),
  ];
}

/** The last day to order and whether it is past. */
export function orderByWords(last: IsoDate | null, asOf: IsoDate): string {
  if (last === null) return "not known: no lead time or no window";
  return last < asOf ? `${day(last)}, past` : day(last);
}
