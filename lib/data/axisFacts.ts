import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { axisFactsOf } from "@/lib/data/axisList/axisFactsOf";
import { change } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type AxisFacts, type ChangeAxisFacts, factGroups, isKnown } from "@/lib/schema/axisFacts";
import { reasonGiven } from "@/lib/schema/why";
import { FACT_LABELS, factWord } from "@/lib/view/axisFacts";

const missing: Refusal = { code: "missing", reason: "There is no such axis that you may change." };

/** What was written, with what a later change has to have seen. */
type Written = Result<{ readonly facts: AxisFacts }, Refusal>;

/**
 * Writes what is known of an axis's cables, travel and homing.
 *
 * Only when the stored facts are still those the person saw; else nothing is written, and the refusal says what
 * somebody else wrote. A group of which nothing is known carries no evidence and no day.
 */
export async function changeAxisFacts(
  actor: Actor,
  { axisId, seen, wanted, why }: ChangeAxisFacts,
): Promise<Written> {
  const facts = withoutIdleEvidence(wanted);
  const ahead = aheadOf(facts, await readAsOf(actor, undefined));
  if (ahead) return err(ahead);
  return change(actor, async (tx, record) => {
    await tx.$queryRaw`SELECT "id" FROM "Axis" WHERE "id" = ${axisId}::uuid FOR UPDATE`;
    const axis = await tx.axis.findFirst({
      where: { id: axisId, machine: { line: atSites(actor, "line:write") } },
      include: { machine: { select: { line: { select: { siteId: true } } } } },
    });
    if (!axis) return err(missing);
    const before = axisFactsOf(axis);
    const moved = differing(before, seen);
    if (moved.length > 0) return err(conflict(before, moved));
    if (differing(before, facts).length === 0) return ok({ facts });
    await tx.axis.update({ where: { id: axisId }, data: columns(facts) });
    const { siteId } = axis.machine.line;
    record({
      ...{ deed: "axis:facts", entity: "Axis", entityId: axisId, siteId },
      before,
      after: facts,
      why: reasonGiven(why),
      beside: true,
    });
    return ok({ facts });
  });
}

const fields = Object.keys(FACT_LABELS) as (keyof AxisFacts)[];

const differing = (one: AxisFacts, other: AxisFacts) => fields.filter((field) => one[field] !== other[field]);

function conflict(stored: AxisFacts, moved: readonly (keyof AxisFacts)[]): Refusal {
  const what = moved.map((field) => `${FACT_LABELS[field]}: ${factWord(stored[field])}`).join("; ");
  return {
    code: "conflict",
    reason: `Somebody else wrote since you opened it: ${what}. Nothing was changed; what you typed stays here. Load the page again before you save it.`,
  };
}

function aheadOf(facts: AxisFacts, today: IsoDate): Refusal | null {
  const ahead = factGroups
    .map((group) => `${group}ReadOn` as const)
    .filter((on) => (facts[on] ?? "") > today);
  if (ahead.length === 0) return null;
  return {
    code: "impossible",
    reason: "What lies ahead has not been read yet. Nothing was changed.",
    fields: Object.fromEntries(ahead.map((field) => [field, "Write a day that is not ahead."])),
  };
}

function withoutIdleEvidence(facts: AxisFacts): AxisFacts {
  const idle = factGroups.filter((group) => !isKnown(facts, group));
  return {
    ...facts,
    ...Object.fromEntries(
      idle.flatMap((group) => [
        [`${group}Evidence`, null],
        [`${group}ReadOn`, null],
      ]),
    ),
  };
}

function columns(facts: AxisFacts) {
  const dateOf = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));
  return {
    ...facts,
    powerCableReadOn: dateOf(facts.powerCableReadOn),
    feedbackCableReadOn: dateOf(facts.feedbackCableReadOn),
    travelReadOn: dateOf(facts.travelReadOn),
    homingReadOn: dateOf(facts.homingReadOn),
  };
}
