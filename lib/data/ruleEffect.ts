import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readLineFacts } from "@/lib/data/lineCompatibility";
import { readRulesInForce } from "@/lib/data/rules";
import { err, ok, type Result } from "@/lib/kernel/result";
import { judgeLine } from "@/lib/retrofit/compatibility";
import { compareJudged, type LineChange } from "@/lib/retrofit/compatibility/compareJudged";
import type { Rule } from "@/lib/retrofit/compatibility/facts";
import { type ProposedRule, readRuleTerms } from "@/lib/schema/compatibilityRule";

/** A line whose verdicts a proposed rule changes. */
export interface ChangedLine extends LineChange {
  readonly code: string;
  readonly name: string;
}

/** What a proposed rule would change, at the sites of who asks. */
export interface RuleEffect {
  /** Lines that were judged. */
  readonly judged: number;
  readonly lines: readonly ChangedLine[];
}

/** What a rule would change if it were written; judged now, stored nowhere. */
export async function previewRule(
  actor: Actor,
  proposed: ProposedRule,
): Promise<Result<RuleEffect, Refusal>> {
  const { code, seen, kind, terms, retired } = proposed;
  const read = readRuleTerms(kind, terms);
  if (!read.ok)
    return err({
      code: "invalid",
      reason: "Some values cannot be used, so nothing was judged.",
      fields: read.error,
    });
  const asOf = await readAsOf(actor, undefined);
  const [before, lines] = await Promise.all([readRulesInForce(actor), readLineFacts(actor, { asOf })]);
  const own = { code, version: seen + 1, kind, terms: read.value, evidence: "assumed" } as Rule;
  const after = [...before.filter((rule) => rule.code !== code), ...(retired ? [] : [own])];
  const changed = lines.flatMap(({ code: line, name, controllers }): ChangedLine[] => {
    const found = compareJudged(judgeLine(before, controllers), judgeLine(after, controllers));
    return found ? [{ code: line, name, ...found }] : [];
  });
  return ok({ judged: lines.length, lines: changed });
}
