import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import type { AcceptRisk, EndAcceptance } from "@/lib/schema/acceptance";
import { drawnLoss } from "@/lib/view/linePlace";

const missing: Refusal = {
  code: "missing",
  reason: "There is no such line or acceptance that you may decide about.",
};
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this acceptance since you opened it. Nothing was changed; load the page again.",
};

export interface AcceptanceMark {
  readonly acceptanceId: string;
  readonly version: number;
}

/** Records that somebody answers for leaving a line as it is, with its loss as it is worked out today. */
export async function acceptRisk(actor: Actor, wanted: AcceptRisk): Promise<Result<AcceptanceMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  if (wanted.until <= today)
    return err({
      code: "impossible",
      reason: "An acceptance that has run out already holds nothing.",
      fields: { until: "Write a day that lies ahead." },
    });
  const { id: evaluationId } = await currentEvaluation(today);
  const evaluated = await database().evaluatedLine.findFirst({
    where: { evaluationId, lineId: wanted.lineId, line: atSites(actor, "plan:approve") },
    select: { result: true, place: true, line: { select: { siteId: true } } },
  });
  if (!evaluated) return err(missing);
  const { stopLoss } = evaluated.result as unknown as LineResult;
  const loss = drawnLoss(stopLoss, evaluated.place as unknown as LinePlace | null);
  const text = (value: number | undefined) => value?.toFixed(2) ?? null;
  return change(actor, async (tx, record) => {
    const { id, version } = await tx.riskAcceptance.create({
      data: {
        ...wanted,
        ...{ acceptedOn: dateOf(today), until: dateOf(wanted.until), recordedBy: actor.name },
        ...{ loss: text(loss?.mean), lossLow: text(loss?.low), lossHigh: text(loss?.high) },
      },
    });
    record({
      ...{ deed: "risk:accept", entity: "RiskAcceptance", entityId: id, siteId: evaluated.line.siteId },
      after: { ...wanted, acceptedOn: today, loss: text(loss?.mean) },
    });
    return ok({ acceptanceId: id, version });
  });
}

/** Ends an acceptance today: the line is to be looked at again. */
export async function endAcceptance(
  actor: Actor,
  which: EndAcceptance,
): Promise<Result<AcceptanceMark, Refusal>> {
  return setEnd(actor, which, await readAsOf(actor, undefined));
}

/** Takes back the end of an acceptance. */
export async function reopenAcceptance(
  actor: Actor,
  which: EndAcceptance,
): Promise<Result<AcceptanceMark, Refusal>> {
  return setEnd(actor, which, null);
}

async function setEnd(
  actor: Actor,
  { acceptanceId, version }: EndAcceptance,
  endedOn: string | null,
): Promise<Result<AcceptanceMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await tx.riskAcceptance.findFirst({
      where: { id: acceptanceId, line: atSites(actor, "plan:approve") },
      select: { line: { select: { siteId: true } } },
    });
    if (!stored) return err(missing);
    const { count } = await tx.riskAcceptance.updateMany({
      where: { id: acceptanceId, version },
      data: { endedOn: endedOn === null ? null : dateOf(endedOn), version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    const { siteId } = stored.line;
    record({
      deed: "risk:end",
      entity: "RiskAcceptance",
      entityId: acceptanceId,
      siteId,
      after: { endedOn },
    });
    return ok({ acceptanceId, version: version + 1 });
  });
}

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);
