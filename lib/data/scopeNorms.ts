import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayStateAssumptions } from "@/lib/data/assumptions";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { err, ok, type Result } from "@/lib/kernel/result";
import { likelyScopeNorms, type ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { type ChangeScopeNorm, PLAIN_KEYS, scopeNorms } from "@/lib/schema/scopeNorms";

const SETTING = "scopeNorms";

/** The norms in force. */
export interface NormsInForce {
  readonly norms: ScopeNorms;
  /** When they were last changed; null is the set the product brings. */
  readonly changedAt: string | null;
  readonly mayChange: boolean;
}

const notAllowed: Refusal = {
  code: "forbidden",
  reason: "The norms hold for all sites, so only somebody who may plan at all of them changes them.",
};
const moved: Refusal = {
  code: "conflict",
  reason: "Somebody else changed a norm since you opened the page. Nothing was changed; load the page again.",
};

/** The norms retrofits are costed with, and whether the person may change them. */
export async function readScopeNorms(actor: Actor): Promise<NormsInForce> {
  return { ...(await stored(database())), mayChange: mayStateAssumptions(actor) };
}

/** Writes another value of one norm, if nobody else changed any meanwhile; the whole set must still hold. */
export async function changeScopeNorm(
  actor: Actor,
  { key, seen, values }: ChangeScopeNorm,
): Promise<Result<{ changedAt: string }, Refusal>> {
  if (!mayStateAssumptions(actor)) return err(notAllowed);
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const before = await stored(tx);
    if (before.changedAt !== seen) return err(moved);
    const read = scopeNorms.safeParse(withNorm(before.norms, key, values));
    if (!read.success) {
      const reason = read.error.issues[0]?.message ?? "That value cannot be used.";
      return err({ code: "invalid", reason, fields: { values: reason } });
    }
    const changedAt = new Date();
    await tx.setting.upsert({
      where: { key: SETTING },
      create: { key: SETTING, value: read.data, changedAt },
      update: { value: read.data, changedAt },
    });
    record({
      ...{ deed: "norm:change", entity: "ScopeNorm", entityId: key },
      ...{ before: { [key]: normOf(before.norms, key) }, after: { [key]: normOf(read.data, key) } },
    });
    return ok({ changedAt: changedAt.toISOString() });
  });
}

async function stored(tx: Transaction): Promise<Omit<NormsInForce, "mayChange">> {
  const row = await tx.setting.findUnique({ where: { key: SETTING } });
  return row === null
    ? { norms: likelyScopeNorms, changedAt: null }
    : { norms: scopeNorms.parse(row.value), changedAt: row.changedAt.toISOString() };
}

const isPlain = (key: string) => PLAIN_KEYS.some((one) => one === key);

function withNorm({ spans, plain }: ScopeNorms, key: string, values: readonly number[]) {
  return isPlain(key)
    ? { spans, plain: { ...plain, [key]: values.length === 1 ? values[0] : values } }
    : { spans: { ...spans, [key]: values }, plain };
}

function normOf({ spans, plain }: ScopeNorms, key: string): number | number[] {
  const value: number | readonly number[] | undefined = Object.entries({ ...spans, ...plain }).find(
    ([one]) => one === key,
  )?.[1];
  return typeof value === "number" ? value : [...(value ?? [])];
}
