import type { Entity, Intent, Kept } from "@/lib/intake/intents/intent";

/** Everything a file says about one stored thing, with the row that said it first. */
export interface Merged {
  readonly entity: Entity;
  readonly key: string;
  readonly parents: Intent["parents"];
  readonly values: Readonly<Record<string, Kept>>;
  readonly whenNew: Readonly<Record<string, Kept>>;
  readonly rowNumber: number;
}

/** Two rows that say different things of one thing. */
export interface Contradiction {
  readonly rowNumber: number;
  readonly firstRow: number;
  readonly entity: Entity;
  readonly field: string;
  readonly first: Kept;
  readonly second: Kept;
}

/** Brings together what the rows say of each thing; the first row's word stands where a later one differs. */
export function mergeIntents(intents: readonly Intent[]): {
  readonly merged: readonly Merged[];
  readonly contradictions: readonly Contradiction[];
} {
  const things = new Map<string, Merged>();
  const contradictions: Contradiction[] = [];
  for (const intent of intents) {
    const mark = `${intent.entity}\n${intent.key}`;
    const before = things.get(mark);
    if (before) contradictions.push(...disagreements(before, intent));
    things.set(mark, before ? together(before, intent) : intent);
  }
  return { merged: [...things.values()], contradictions };
}

function disagreements(before: Merged, after: Intent): Contradiction[] {
  return Object.entries(after.values)
    .filter(([field, value]) => field in before.values && before.values[field] !== value)
    .filter(([field]) => !(after.adds ?? []).includes(field))
    .map(([field, second]) => ({
      rowNumber: after.rowNumber,
      firstRow: before.rowNumber,
      entity: after.entity,
      field,
      first: before.values[field] ?? null,
      second,
    }));
}

function together(before: Merged, after: Intent): Merged {
  return {
    ...before,
    parents: { ...after.parents, ...before.parents },
    values: addUp({ ...after.values, ...before.values }, before, after),
    whenNew: { ...after.whenNew, ...before.whenNew },
  };
}

/** Fields that add up over the rows; where one row does not know its share, the sum is not known. */
function addUp(values: Merged["values"], before: Merged, after: Intent): Merged["values"] {
  const sums = { ...values };
  for (const field of after.adds ?? []) {
    const [one, other] = [before.values[field], after.values[field]];
    if (typeof one === "number" && typeof other === "number") sums[field] = one + other;
    else if (field in sums) sums[field] = null;
  }
  return sums;
}
