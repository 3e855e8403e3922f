import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { loadComparison } from "@/lib/data/sighting/loadSources";
import { type SightStep, takeStepsBack, writeSteps } from "@/lib/data/sighting/steps";
import { takeOverSteps } from "@/lib/data/sighting/takeOver";
import type { SightFinding } from "@/lib/intake/sightings/compareSources";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SettleSighting, TakeVerdictBack } from "@/lib/schema/sighting";
import { findingWords, sightRow } from "@/lib/view/sighting";

const gone: Refusal = {
  code: "conflict",
  reason:
    "This no longer stands so: a newer list, an edit or somebody else's decision changed it. Nothing was changed; load the page again.",
};
const none: Refusal = {
  code: "missing",
  reason: "There is no such decision at a site you may change.",
};
const builtOn: Refusal = {
  code: "conflict",
  reason: "Somebody changed what this decision wrote since. Nothing was taken back; mend the record by hand.",
};

/** Keeps what a person decided of a finding, and makes the register say it where it is taken over or retired. */
export async function settleFinding(
  actor: Actor,
  { siteId, mark, answer, reason }: SettleSighting,
): Promise<Result<{ verdictId: string }, Refusal>> {
  if (!mayAt(actor.grants, "line:write", siteId)) return err(none);
  const asOf = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const { findings } = await loadComparison(tx, { siteId, asOf });
    const finding = findings.find((one) => one.mark === mark);
    const known = await tx.sightVerdict.count({ where: { siteId, mark } });
    if (!finding || known > 0 || !sightRow(finding, null).answers.includes(answer)) return err(gone);
    const steps = await stepsOf(tx, finding, { answer, reason, asOf });
    if (!steps.ok) return steps;
    await writeSteps(tx, steps.value);
    const what = findingWords(finding);
    const kept = await tx.sightVerdict.create({
      data: {
        ...{ siteId, mark, what, answer, reason, steps: steps.value, decidedBy: actor.name },
        decidedOn: new Date(`${asOf}T00:00:00Z`),
      },
    });
    record({
      ...{ deed: "sighting:settle", entity: "SightVerdict", entityId: kept.id, siteId },
      after: { what, answer, reason },
    });
    for (const deed of deedsOf("sighting:settle", siteId, steps.value)) record(deed);
    return ok({ verdictId: kept.id });
  });
}

async function stepsOf(
  tx: Transaction,
  finding: SightFinding,
  {
    answer,
    reason,
    asOf,
  }: { readonly answer: SettleSighting["answer"]; readonly reason: string; readonly asOf: IsoDate },
): Promise<Result<SightStep[], Refusal>> {
  if (answer === "taken") return takeOverSteps(tx, finding);
  if (answer === "kept" || finding.item === null) return ok([]);
  const { id } = finding.item;
  return ok([
    {
      ...{ entity: "Position", id, before: { retiredOn: null, retiredReason: "" } },
      after: { retiredOn: asOf, retiredReason: reason },
    },
  ]);
}

/** One entry of the audit for each row of the register. */
function deedsOf(deed: string, siteId: string, steps: readonly SightStep[]) {
  return steps.map(({ entity, id, before, after }) => ({
    ...{ deed, entity, entityId: id, siteId, after },
    ...(before === null ? {} : { before }),
  }));
}

/** Takes a decision back, and what it wrote with it; refused once somebody built on it. */
export async function takeFindingBack(
  actor: Actor,
  { verdictId }: TakeVerdictBack,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const kept = await tx.sightVerdict.findFirst({
      where: { id: verdictId, ...atSites(actor, "line:write") },
    });
    if (!kept) return err(none);
    if (!(await takeStepsBack(tx, kept.steps))) return err(builtOn);
    await tx.sightVerdict.delete({ where: { id: verdictId } });
    const { siteId, what, answer, reason } = kept;
    record({
      ...{ deed: "sighting:back", entity: "SightVerdict", entityId: verdictId, siteId },
      before: { what, answer, reason },
    });
    const steps = kept.steps as unknown as SightStep[];
    for (const { entity, id, before, after } of steps)
      record({
        ...{ deed: "sighting:back", entity, entityId: id, siteId, before: after },
        ...(before === null ? {} : { after: before }),
      });
    return ok(null);
  });
}
