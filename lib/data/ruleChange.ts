import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, holdData } from "@/lib/data/change";
import { mayChangeRules } from "@/lib/data/rules";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type ChangedRule, readRuleTerms } from "@/lib/schema/compatibilityRule";
import type { CompatibilityRule, Prisma } from "@/prisma/generated/client";

const notAllowed: Refusal = {
  code: "forbidden",
  reason: "The rules hold for all sites, so only somebody who may plan at all of them changes them.",
};
const moved: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this rule since you opened it. Nothing was changed; load the page again.",
};
const taken: Refusal = {
  code: "invalid",
  reason: "There is a rule of this code. Nothing was changed.",
  fields: { code: "Choose a code that is not taken." },
};
const otherKind: Refusal = {
  code: "invalid",
  reason: "A rule keeps its kind. Retire it and write another. Nothing was changed.",
};
const nothingDiffers: Refusal = {
  code: "invalid",
  reason: "Nothing differs from the version in force. Nothing was changed.",
};

/** Writes a new version of a rule, or the first one of a new rule; the newest is in force at once. */
export async function changeRule(
  actor: Actor,
  { code, seen, kind, terms, ...said }: ChangedRule,
): Promise<Result<{ readonly code: string; readonly version: number }, Refusal>> {
  if (!mayChangeRules(actor)) return err(notAllowed);
  const read = readRuleTerms(kind, terms);
  if (!read.ok)
    return err({
      code: "invalid",
      reason: "Some values cannot be used. Nothing was changed.",
      fields: read.error,
    });
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const last = await tx.compatibilityRule.findFirst({ where: { code }, orderBy: { version: "desc" } });
    const next = { kind, terms: read.value, ...said };
    const refusal = refusalOf(last, { seen, next });
    if (refusal) return err(refusal);
    const version = seen + 1;
    const { id } = await tx.compatibilityRule.create({
      data: { ...next, code, version, changedBy: actor.name, terms: next.terms as Prisma.InputJsonValue },
    });
    record({
      ...{ deed: said.retired ? "rules:retire" : "rules:change", entity: "CompatibilityRule", entityId: id },
      ...(last ? { before: auditOf(last) } : {}),
      after: auditOf({ code, version, ...next }),
    });
    return ok({ code, version });
  });
}

type Said = Omit<ChangedRule, "code" | "seen">;

function refusalOf(
  last: CompatibilityRule | null,
  { seen, next }: { readonly seen: number; readonly next: Said },
): Refusal | null {
  if ((last?.version ?? 0) !== seen) return seen === 0 ? taken : moved;
  if (last === null) return null;
  if (last.kind !== next.kind) return otherKind;
  return same(last, next) ? nothingDiffers : null;
}

function same(last: CompatibilityRule, next: Said): boolean {
  const known = readRuleTerms(last.kind, last.terms);
  return (
    known.ok &&
    JSON.stringify(known.value) === JSON.stringify(next.terms) &&
    last.note === next.note &&
    last.source === next.source &&
    last.evidence === next.evidence &&
    last.retired === next.retired
  );
}

function auditOf(rule: Said & { readonly code: string; readonly version: number }): Prisma.InputJsonObject {
  const { code, version, kind, terms, note, source, evidence, retired } = rule;
  return { code, version, kind, terms: terms as Prisma.InputJsonValue, note, source, evidence, retired };
}
