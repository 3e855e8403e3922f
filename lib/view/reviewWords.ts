import type { MovedPool, MovedValue } from "@/lib/risk/moved/movedPools";
import { moneyKind, movedSteps, signedEuros } from "@/lib/view/moved";
import { count, NOT_KNOWN, plainNumber } from "@/lib/view/number";
import type { ReviewFigures, WorsePart } from "@/lib/view/review";
import { isLate, type ReviewAction } from "@/lib/view/reviewRecord";
import { day } from "@/lib/view/time";

const TENTHS = 10;
const MINUS = "\u2212";

/** A figure before and now, and what lies between, in words and numbers. */
export interface ShownMove {
  readonly before: string;
  readonly after: string;
  readonly kind: "better" | "worse" | "same";
  readonly change: string;
}

const signed = (value: number, places: number) =>
  `${value > 0 ? "+" : value < 0 ? MINUS : ""}${plainNumber(Math.abs(value), places)}`;
const perMille = (value: number | null) =>
  value === null ? "not there" : `${plainNumber(value / TENTHS, 1)}\u00a0%`;
const tenths = (value: number | null) => (value === null ? "not there" : plainNumber(value / TENTHS, 1));
const euros = (value: number | null) => (value === null ? NOT_KNOWN : plainNumber(value));

/** The three figures of a part at a site, before and now. */
export function movedFigures({ noSpare, loss, usable }: MovedPool) {
  return {
    noSpare: shown(noSpare, perMille, { kind: moneyKind(noSpare.change), change: points(noSpare.change) }),
    loss: shown(loss, euros, { kind: moneyKind(loss.change), change: signedEuros(loss.change) }),
    usable: shown(usable, tenths, {
      kind: moneyKind(-usable.change),
      change: signed(usable.change / TENTHS, 1),
    }),
  } satisfies Record<string, ShownMove>;
}

function shown(
  { before, after }: MovedValue,
  write: (value: number | null) => string,
  change: Pick<ShownMove, "kind" | "change">,
): ShownMove {
  return { before: write(before), after: write(after), ...change };
}

const points = (change: number) => `${signed(change / TENTHS, 1)} points`;

/** Each step's part in the three figures; they add up to the change as printed, which is the last row. */
export function stepRows({ noSpare, loss, usable }: MovedPool) {
  const row = (name: string, of: (value: MovedValue) => number) => ({
    name,
    noSpare: signed(of(noSpare) / TENTHS, 1),
    loss: signed(of(loss), 0),
    usable: signed(of(usable) / TENTHS, 1),
  });
  return [
    ...movedSteps.map(({ step, name }) => row(name, (value) => value.steps[step])),
    row("Together", (value) => value.change),
  ];
}

/** Why a part got worse, in one line: the step that mattered most, and what was recorded of it. */
export function whyText({ main, inputs }: WorsePart): string {
  const name = movedSteps.find(({ step }) => step === main)?.name ?? "";
  const [first, ...rest] = inputs.filter(({ step, what }) => step === main && !what.startsWith("sum over"));
  if (!first) return `${name}: ${main === "clock" ? "only days passed" : "through other parts and rates"}`;
  const more = rest.length > 0 ? `, and ${plainNumber(rest.length)} more` : "";
  return `${name}: ${first.what} ${first.before} → ${first.after}${more}`;
}

/** What got worse of a part, as a reason to buy it; no amount, since a reason is read by whoever reads the list. */
export function worseText(part: WorsePart): string {
  const { noSpare } = movedFigures(part);
  return `no-spare chance ${noSpare.before} → ${noSpare.after}`;
}

interface Lead {
  readonly figures: ReviewFigures;
  readonly actions: readonly ReviewAction[];
}

/** The review in one sentence. */
export function reviewLead({ figures, actions }: Lead, asOf: string): string {
  const { worse, base, repairs } = figures;
  const late = actions.filter((action) => isLate(action, asOf)).length;
  const open = actions.filter(({ state }) => state === "open").length;
  return `${count(worse.length, "part")} got worse since ${day(base.asOf)}; ${count(repairs.length, "repair is", "repairs are")} overdue; ${count(open, "action is", "actions are")} open, ${late === 0 ? "none late" : `${plainNumber(late)} late`}.`;
}
