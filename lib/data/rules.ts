import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { mayStateAssumptions } from "@/lib/data/assumptions";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import type { Rule } from "@/lib/retrofit/compatibility/facts";
import { ruleTerms } from "@/lib/schema/compatibilityRule";
import type { RuleVersion } from "@/lib/view/ruleTable";
import type { CompatibilityRule } from "@/prisma/generated/client";

/** Every rule and its versions. */
export interface RuleOverview {
  /** Newest version of each code, retired ones too, by code. */
  readonly rules: readonly RuleVersion[];
  /** Every version written down, newest first. */
  readonly versions: readonly RuleVersion[];
  /** Whether the person may change rules: they hold for all sites, as assumptions do. */
  readonly mayChange: boolean;
}

/** The compatibility rules of the group with their versions; null for who may read nowhere. */
export async function readRuleOverview(actor: Actor): Promise<RuleOverview | null> {
  if (!maySomewhere(actor.grants, "read")) return null;
  const rows = await database().compatibilityRule.findMany({
    orderBy: [{ changedAt: "desc" }, { code: "asc" }, { version: "desc" }],
  });
  return {
    rules: newest(rows).map(versionOf),
    versions: rows.map(versionOf),
    mayChange: mayChangeRules(actor),
  };
}

/** Whether the person may change rules: the same people who state assumptions. */
export function mayChangeRules(actor: Actor): boolean {
  return mayStateAssumptions(actor);
}

/** The rules in force: the newest version of each code that is not retired, by code. */
export async function readRulesInForce(actor: Actor, tx: Transaction = database()): Promise<Rule[]> {
  if (!maySomewhere(actor.grants, "read")) return [];
  const rows = await tx.compatibilityRule.findMany();
  return newest(rows).flatMap((row) => (row.retired ? [] : [ruleOf(row)]));
}

function newest(rows: readonly CompatibilityRule[]): CompatibilityRule[] {
  const last = new Map<string, CompatibilityRule>();
  for (const row of rows) if (row.version > (last.get(row.code)?.version ?? 0)) last.set(row.code, row);
  return [...last.values()].sort((a, b) => a.code.localeCompare(b.code, "en-GB", { numeric: true }));
}

function ruleOf({ code, version, kind, terms, evidence }: CompatibilityRule): Rule {
  return { code, version, kind, evidence, terms: ruleTerms[kind].parse(terms) } as Rule;
}

function versionOf(row: CompatibilityRule): RuleVersion {
  const { note, source, retired, changedBy } = row;
  return {
    ...ruleOf(row),
    note,
    source,
    retired,
    changedBy,
    changedOn: row.changedAt.toISOString().slice(0, 10),
  };
}
