import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import { isProfileFamily } from "@/lib/retrofit/profileFamilies";
import type {
  ChangeControllerPlate,
  ChangeNetworkPlate,
  ChangePartPlate,
  ControllerPlate,
} from "@/lib/schema/plate";

const moved: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this since you opened it. Nothing was changed; what you typed stays here. Load the page again.",
};
const noFamily: Refusal = {
  code: "invalid",
  reason: "Some entries cannot be used. Nothing was changed.",
  fields: { profileFamily: "This is no communication profile family of IEC 61784 on the list." },
};
const missing = (what: string): Refusal => ({
  code: "missing",
  reason: `There is no such ${what} that you may change.`,
});

type Changed = Result<null, Refusal>;

/** Writes what was read off a controller and which line it leads, when that is still as the person saw it. */
export async function changeControllerPlate(
  actor: Actor,
  { controllerId, seen, wanted }: ChangeControllerPlate,
): Promise<Changed> {
  if ((wanted.readOn ?? "") > (await readAsOf(actor, undefined)))
    return err({
      code: "impossible",
      reason: "What lies ahead has not been read yet. Nothing was changed.",
      fields: { readOn: "Write a day that is not ahead." },
    });
  return change(actor, async (tx, record) => {
    const where = { id: controllerId, ...atSites(actor, "line:write") };
    const stored = await tx.controller.findFirst({ where });
    if (!stored) return err(missing("controller"));
    const { siteId } = stored;
    const refusal = await leadingRefusal(tx, { controllerId, siteId, wanted });
    if (refusal) return err(refusal);
    const { count } = await tx.controller.updateMany({
      where: { ...where, ...columns(seen) },
      data: columns(wanted),
    });
    if (count === 0) return err(moved);
    record({
      ...{ deed: "controller:plate", entity: "Controller", entityId: controllerId, siteId },
      ...{ before: seen, after: wanted, beside: true },
    });
    return ok(null);
  });
}

function columns({ readOn, ...plain }: ControllerPlate) {
  return { ...plain, readOn: readOn === null ? null : new Date(`${readOn}T00:00:00Z`) };
}

interface Leading {
  readonly controllerId: string;
  readonly siteId: string;
  readonly wanted: ControllerPlate;
}

/** A controller leads a line one of its machines stands on, and a line has one leading controller. */
async function leadingRefusal(
  tx: Transaction,
  { controllerId, siteId, wanted: { leadsLineId } }: Leading,
): Promise<Refusal | null> {
  if (leadsLineId === null) return null;
  const line = await tx.line.findFirst({
    where: { id: leadsLineId, siteId, machines: { some: { controllerId } } },
    select: { code: true, lead: { select: { id: true, designation: true } } },
  });
  if (!line) return missing("line of this controller");
  if (line.lead === null || line.lead.id === controllerId) return null;
  return {
    code: "conflict",
    reason: `${line.lead.designation} leads ${line.code}; a line has one leading controller. Nothing was changed.`,
    fields: { leadsLineId: `Say first, at ${line.lead.designation}, that it leads no line.` },
  };
}

/** Writes what stands on the plate of a part. Parts belong to every site, so a role at all of them is asked for. */
export function changePartPlate(actor: Actor, { partId, seen, wanted }: ChangePartPlate): Promise<Changed> {
  return change(actor, async (tx, record) => {
    if (scopeOf(actor.grants, "register:import") !== "all") return err(missing("part"));
    if (isUnlisted(wanted.profileFamily)) return err(noFamily);
    if ((await tx.part.count({ where: { id: partId } })) === 0) return err(missing("part"));
    const { count } = await tx.part.updateMany({ where: { id: partId, ...seen }, data: wanted });
    if (count === 0) return err(moved);
    record({
      deed: "part:plate",
      entity: "Part",
      entityId: partId,
      before: seen,
      after: wanted,
      beside: true,
    });
    return ok(null);
  });
}

/** Writes the communication profile family of a network. */
export function changeNetworkPlate(
  actor: Actor,
  { networkId, seen, wanted }: ChangeNetworkPlate,
): Promise<Changed> {
  return change(actor, async (tx, record) => {
    if (isUnlisted(wanted.profileFamily)) return err(noFamily);
    const where = { id: networkId, ...atSites(actor, "line:write") };
    const network = await tx.network.findFirst({ where, select: { siteId: true } });
    if (!network) return err(missing("network"));
    const { count } = await tx.network.updateMany({ where: { ...where, ...seen }, data: wanted });
    if (count === 0) return err(moved);
    record({
      ...{ deed: "network:plate", entity: "Network", entityId: networkId, siteId: network.siteId },
      ...{ before: seen, after: wanted, beside: true },
    });
    return ok(null);
  });
}

const isUnlisted = (number: number | null) => number !== null && !isProfileFamily(number);
