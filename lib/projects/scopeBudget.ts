import { type Amount, splitAmount } from "@/lib/kernel/money";
import type { ClassAmount } from "@/lib/projects/ledger";
import type { MoneyRow, ScopeMoney } from "@/lib/retrofit/scope/scopeMoney";
import { type CostClass, costClasses } from "@/lib/schema/costClass";

/** What the rows of a scope are for, by how their labels begin. */
const STARTS: readonly (readonly [CostClass, RegExp])[] = [
  ["drives", /^(Drives?|Cable sets|Feedback adapters|Motors)\b/],
  ["controllers", /^(Controllers|I\/O racks|Operator panels)\b/],
  ["engineering", /^(Survey|Engineering|Converting programs)\b/],
  ["installation", /^(Panel work|Taking out|Commissioning|Safety validation|Validation|Raising firmware)\b/],
];

/**
 * The class a row of a scope is budgeted under.
 *
 * @throws {RangeError} naming a label of no class.
 */
export function classOfRow({ label }: Pick<MoneyRow, "label">): CostClass {
  const found = STARTS.find(([, start]) => start.test(label));
  if (!found) throw new RangeError(`no class of costs for ${label}`);
  return found[0];
}

/**
 * Splits a budget by class in the proportions of a scope's typical costs, its contingency a class of its own; the parts
 * are the whole to the last unit.
 *
 * @param hourlyRate EUR an hour, typical.
 * @returns empty when the scope costs nothing.
 */
export function scopeBudget(
  budget: Amount,
  {
    money,
    hourlyRate,
    places,
  }: { readonly money: ScopeMoney; readonly hourlyRate: number; readonly places: number },
): ClassAmount[] {
  const euros = new Map<CostClass, number>();
  for (const row of money.rows) {
    const cost = row.total[1] * (row.kind === "hours" ? hourlyRate : 1);
    const key = classOfRow(row);
    euros.set(key, (euros.get(key) ?? 0) + cost);
  }
  const plain = [...euros.values()].reduce((sum, one) => sum + one, 0);
  euros.set("contingency", Math.max(0, money.cost[1] - plain));
  const kept = costClasses.filter((costClass) => (euros.get(costClass) ?? 0) > 0);
  const parts = splitAmount(
    budget,
    kept.map((costClass) => euros.get(costClass) ?? 0),
    places,
  );
  return kept.map((costClass, i) => ({ costClass, amount: parts[i] ?? budget }));
}
