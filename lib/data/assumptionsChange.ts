import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayStateAssumptions } from "@/lib/data/assumptions";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { ASSUMPTION_SETTING, assumptionsInUse, storedAssumptions } from "@/lib/data/group/assumptionsInUse";
import { err, ok, type Result } from "@/lib/kernel/result";
import { assumptionFields, assumptionValue, withAssumptions } from "@/lib/risk/assumptionFields";
import { productSets } from "@/lib/risk/assumptionSets";
import type { Assumptions } from "@/lib/risk/assumptions";
import { type AssumptionProblem, readAssumptions } from "@/lib/risk/readAssumptions";
import type { AssumptionChoice, ChosenAssumptions, OwnAssumptions } from "@/lib/schema/assumptions";
import { reasonGiven } from "@/lib/schema/why";
import type { Prisma } from "@/prisma/generated/client";

const notAllowed: Refusal = {
  code: "forbidden",
  reason: "The assumptions hold for all sites, so only somebody who may plan at all of them changes them.",
};
const moved: Refusal = {
  code: "conflict",
  reason:
    "Somebody else stated a newer version since you opened it. Nothing was changed; load the page again.",
};
const nothingDiffers: Refusal = {
  code: "invalid",
  reason: "No value differs from the own set as it stands. Nothing was changed.",
};
const missing: Refusal = { code: "missing", reason: "There is no such version of the assumptions." };

/**
 * Writes a new version of the own set: the newest one, or the likely values when there is none, with the changes.
 *
 * The whole set is checked, so values that only fit together are refused together. It is not yet in use.
 */
export async function stateAssumptions(
  actor: Actor,
  { seen, changes, note, owner }: OwnAssumptions,
): Promise<Result<AssumptionChoice, Refusal>> {
  if (!mayStateAssumptions(actor)) return err(notAllowed);
  const strays = strayPaths(changes);
  if (strays) return err(strays);
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const last = await tx.assumptionSet.findFirst({ where: { kind: "own" }, orderBy: { version: "desc" } });
    if ((last?.version ?? 0) !== seen) return err(moved);
    const base = last ? storedAssumptions(last.values) : productSets.likely.values;
    const read = readAssumptions(withAssumptions(base, changes));
    if (!read.ok) return err(refusalOf(read.error, Object.keys(changes)));
    if (!differs(base, read.value)) return err(nothingDiffers);
    const version = seen + 1;
    const { id } = await tx.assumptionSet.create({
      data: { ...{ kind: "own", version, note, owner, changedBy: actor.name }, values: asJson(read.value) },
    });
    record({
      ...{ deed: "assumptions:state", entity: "AssumptionSet", entityId: id },
      ...{ before: { version: seen }, after: { version, changes, note, owner } },
    });
    return ok({ kind: "own", version });
  });
}

/** Takes a version of a set into use for the whole group; answers with the one that was in use before. */
export async function chooseAssumptions(
  actor: Actor,
  { kind, version, why }: ChosenAssumptions,
): Promise<Result<{ former: AssumptionChoice }, Refusal>> {
  if (!mayStateAssumptions(actor)) return err(notAllowed);
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const inUse = await assumptionsInUse(tx);
    const former = { kind: inUse.kind, version: inUse.version };
    if (former.kind === kind && former.version === version) return ok({ former });
    if (!(await isKept(tx, { kind, version }, actor))) return err(missing);
    const value = { kind, version };
    await tx.setting.upsert({
      where: { key: ASSUMPTION_SETTING },
      create: { key: ASSUMPTION_SETTING, value },
      update: { value, changedAt: new Date() },
    });
    record({
      ...{ deed: "assumptions:choose", entity: "Setting", entityId: ASSUMPTION_SETTING },
      ...{ before: former, after: value, why: reasonGiven(why) },
    });
    return ok({ former });
  });
}

/** Whether the version is written down; one of the product's own is, the first time it is chosen. */
async function isKept(tx: Transaction, { kind, version }: AssumptionChoice, actor: Actor): Promise<boolean> {
  if (await tx.assumptionSet.findUnique({ where: { kind_version: { kind, version } }, select: { id: true } }))
    return true;
  if (kind === "own" || productSets[kind].version !== version) return false;
  const note = "Set of the product: common practice and own choice, no source";
  await tx.assumptionSet.create({
    data: {
      ...{ kind, version, note, owner: "Ebbline, product", changedBy: actor.name },
      values: asJson(productSets[kind].values),
    },
  });
  return true;
}

/** Names that are not of an assumption, or of one that is not changed here. */
function strayPaths(changes: OwnAssumptions["changes"]): Refusal | null {
  const fields: Record<string, string> = {};
  for (const path of Object.keys(changes)) {
    const field = assumptionFields.find((one) => one.path === path);
    if (!field) fields[path] = "There is no such assumption.";
    else if (field.fixed !== null) fields[path] = field.fixed;
  }
  return Object.keys(fields).length === 0 ? null : invalid(fields);
}

/** A problem of several values together is said at each of those that were changed. */
function refusalOf(problems: readonly AssumptionProblem[], changed: readonly string[]): Refusal {
  const fields: Record<string, string> = {};
  for (const { path, message } of problems) {
    const here = changed.filter((one) => one === path || one.startsWith(`${path}.`));
    for (const one of here.length > 0 ? here : [path]) fields[one] ??= message;
  }
  return invalid(fields);
}

function invalid(fields: Readonly<Record<string, string>>): Refusal {
  return { code: "invalid", reason: "Some values cannot be used. Nothing was changed.", fields };
}

function differs(before: Assumptions, after: Assumptions): boolean {
  return assumptionFields.some((field) => assumptionValue(before, field) !== assumptionValue(after, field));
}

function asJson(values: Assumptions): Prisma.InputJsonValue {
  return values as unknown as Prisma.InputJsonValue;
}
