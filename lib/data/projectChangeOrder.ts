import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { findProjectFile } from "@/lib/data/project";
import { placesOf } from "@/lib/kernel/currency";
import { compareAmounts, fitsPlaces, sumAmounts } from "@/lib/kernel/money";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AskChange, DecideChange, WithdrawChange } from "@/lib/schema/projectMoney";
import { exactMoney } from "@/lib/view/format";
import { type ProjectChange, type ProjectFile, projectFigures } from "@/lib/view/project";

const missing: Refusal = { code: "missing", reason: "There is no such project that you may change." };
const noChange: Refusal = { code: "missing", reason: "There is no such change in this project." };
const conflict: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this since you opened it. Nothing was changed; load the page again.",
};

/** Which change was written, and its version, to take it back with. */
export interface ChangeMark {
  readonly changeId: string;
  readonly version: number;
}

/** Asks for a change of the budget; it counts once somebody who may approves it. */
export async function askChange(
  actor: Actor,
  { projectId, amounts, ...said }: AskChange,
): Promise<Result<ChangeMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const project = await held(tx, actor, { projectId, deed: "project:write" });
    if (!project) return err(missing);
    const wrong = refusalOf(project, { ...said, amounts });
    if (wrong) return err(wrong);
    const number = 1 + Math.max(0, ...project.changes.map((one) => one.number));
    const made = await tx.changeOrder.create({
      data: {
        ...{ projectId, number, ...said, askedBy: actor.name, askedOn: dateOf(today) },
        amounts: { create: amounts },
      },
    });
    record({
      ...{ deed: "project:ask", entity: "ChangeOrder", entityId: made.id, siteId: project.siteId },
      after: {
        number,
        ...said,
        amounts: Object.fromEntries(amounts.map((one) => [one.costClass, one.amount])),
      },
    });
    return ok({ changeId: made.id, version: made.version });
  });
}

function refusalOf(
  { currency, items }: ProjectFile,
  { source, amounts }: Pick<AskChange, "source" | "amounts">,
): Refusal | null {
  const invalid = (reason: string): Refusal => ({ code: "invalid", reason, fields: { amounts: reason } });
  const places = placesOf(currency);
  if (!amounts.every(({ amount }) => fitsPlaces(amount, places)))
    return invalid(`${currency} has ${places} places behind the point.`);
  if (source === "new_money") return null;
  if (items.length === 0) return invalid("The budget is not split by class, so it has no contingency.");
  return amounts.some(({ costClass }) => costClass === "contingency")
    ? invalid("Contingency cannot be moved to itself; name the class that gets the money.")
    : null;
}

/** Approves or declines a change, or opens the decision again, if nobody else did anything meanwhile. */
export async function decideChange(
  actor: Actor,
  { projectId, changeId, version, state, why }: DecideChange,
): Promise<Result<ChangeMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const project = await held(tx, actor, { projectId, deed: "plan:approve" });
    if (!project) return err(missing);
    const asked = project.changes.find(({ id }) => id === changeId);
    if (!asked) return err(noChange);
    const short = state === "approved" ? shortage(project, asked, today) : null;
    if (short) return err(short);
    const { count } = await tx.changeOrder.updateMany({
      where: { id: changeId, projectId, version },
      data: { ...decisionOf(actor, { state, why, today }), version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "project:decide", entity: "ChangeOrder", entityId: changeId, siteId: project.siteId },
      ...{ before: { state: asked.state }, after: { number: asked.number, state, why } },
    });
    return ok({ changeId, version: version + 1 });
  });
}

function decisionOf(
  actor: Actor,
  { state, why, today }: Pick<DecideChange, "state" | "why"> & { readonly today: string },
) {
  if (state === "asked") return { state, decidedBy: null, decidedOn: null, decisionWhy: null };
  return { state, decidedBy: actor.name, decidedOn: dateOf(today), decisionWhy: why === "" ? null : why };
}

/** What contingency has left on the day must be enough for what is taken from it. */
function shortage(project: ProjectFile, { source, amounts }: ProjectChange, today: string): Refusal | null {
  if (source !== "contingency") return null;
  const { contingencyLeft } = projectFigures(project, today).ledger;
  const taken = sumAmounts(
    amounts.map(({ amount }) => amount),
    placesOf(project.currency),
  );
  if (contingencyLeft !== null && compareAmounts(taken, contingencyLeft) <= 0) return null;
  return {
    code: "impossible",
    reason: `Contingency has ${exactMoney(contingencyLeft ?? "0", project.currency)} left, the change takes ${exactMoney(taken, project.currency)}.`,
  };
}

/** Takes a change back that nobody has decided. */
export async function withdrawChange(
  actor: Actor,
  { projectId, changeId, version }: WithdrawChange,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await held(tx, actor, { projectId, deed: "project:write" });
    if (!project) return err(missing);
    const asked = project.changes.find(({ id }) => id === changeId);
    if (!asked) return err(noChange);
    const where = { id: changeId, projectId, version, state: "asked" } as const;
    const { count } = await tx.changeOrder.deleteMany({ where });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "project:ask", entity: "ChangeOrder", entityId: changeId, siteId: project.siteId },
      before: { number: asked.number, what: asked.what, why: asked.why, source: asked.source },
    });
    return ok(null);
  });
}

/** The project, held so that two changes neither get one number nor take the same contingency. */
async function held(
  tx: Transaction,
  actor: Actor,
  { projectId, deed }: { readonly projectId: string; readonly deed: Deed },
): Promise<ProjectFile | null> {
  await tx.$queryRaw`SELECT "id" FROM "Project" WHERE "id" = ${projectId}::uuid FOR UPDATE`;
  return findProjectFile(actor, tx, { id: projectId, deed });
}

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);
