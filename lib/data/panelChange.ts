import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddPanel, ChangePanel, PanelWords, PlaceInPanels } from "@/lib/schema/panel";
import { valueWord } from "@/lib/view/importWords";

const noMachine: Refusal = {
  code: "missing",
  reason: "There is no such machine whose panels you may change.",
};
const noPanel: Refusal = { code: "missing", reason: "There is no such panel that you may change." };
const taken: Refusal = {
  code: "conflict",
  reason: "The machine has a panel of this designation. Nothing was changed.",
  fields: { designation: "Choose a designation that no other panel of the machine has." },
};

type Changed = Result<{ readonly id: string }, Refusal>;

/** Records a panel of a machine; nothing stands in it yet. */
export function addPanel(actor: Actor, { machineId, ...words }: AddPanel): Promise<Changed> {
  return change(actor, async (tx, record) => {
    const siteId = await siteOfMachine(tx, actor, machineId);
    if (siteId === null) return err(noMachine);
    if (await isTaken(tx, { machineId, designation: words.designation })) return err(taken);
    const { id } = await tx.panel.create({ data: { machineId, ...words } });
    record({ deed: "panel:add", entity: "Panel", entityId: id, siteId, after: { machineId, ...words } });
    return ok({ id });
  });
}

/** Writes what a panel is called and how it is found, when it is still called as the person saw it. */
export function changePanel(actor: Actor, { panelId, seen, wanted }: ChangePanel): Promise<Changed> {
  return change(actor, async (tx, record) => {
    const stored = await findPanel(tx, actor, panelId);
    if (!stored) return err(noPanel);
    const { machineId, designation, name, location, machine } = stored;
    const before: PanelWords = { designation, name, location };
    if (!same(before, seen)) return err(conflict(before));
    if (same(before, wanted)) return ok({ id: panelId });
    if (
      wanted.designation !== designation &&
      (await isTaken(tx, { machineId, designation: wanted.designation }))
    )
      return err(taken);
    await tx.panel.update({ where: { id: panelId }, data: wanted });
    const { siteId } = machine.line;
    record({
      ...{ deed: "panel:change", entity: "Panel", entityId: panelId, siteId },
      before,
      after: wanted,
    });
    return ok({ id: panelId });
  });
}

/** Takes a panel off the record; the places in it stand in none known. The audit keeps which they were. */
export function removePanel(actor: Actor, { id }: { readonly id: string }): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await findPanel(tx, actor, id);
    if (!stored) return err(noPanel);
    const { machine, ...words } = stored;
    const positions = await tx.position.findMany({ where: { panelId: id }, select: { id: true } });
    await tx.position.updateMany({ where: { panelId: id }, data: { panelId: null } });
    await tx.panel.delete({ where: { id } });
    record({
      ...{ deed: "panel:remove", entity: "Panel", entityId: id, siteId: machine.line.siteId },
      before: { ...words, positionIds: positions.map((position) => position.id) },
    });
    return ok(null);
  });
}

/**
 * Says in which panel each place of a machine stands.
 *
 * Only when no place it moves has been moved since the person looked; else nothing is written.
 */
export function placeInPanels(
  actor: Actor,
  { machineId, seen, wanted }: PlaceInPanels,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const siteId = await siteOfMachine(tx, actor, machineId);
    if (siteId === null) return err(noMachine);
    const saw = new Map(seen.map(({ positionId, panelId }) => [positionId, panelId]));
    const moves = wanted.filter(({ positionId, panelId }) => saw.get(positionId) !== panelId);
    const stored = await tx.position.findMany({
      where: { machineId, id: { in: moves.map(({ positionId }) => positionId) } },
      select: { id: true, designation: true, panelId: true },
    });
    if (stored.length < moves.length || !(await areOfMachine(tx, machineId, moves))) return err(noMachine);
    const moved = stored.filter(({ id, panelId }) => saw.get(id) !== panelId);
    if (moved.length > 0) return err(movedBy(moved.map(({ designation }) => designation)));
    const before = new Map(stored.map(({ id, panelId }) => [id, panelId]));
    for (const { positionId, panelId } of moves) {
      await tx.position.update({ where: { id: positionId }, data: { panelId } });
      record({
        ...{ deed: "panel:place", entity: "Position", entityId: positionId, siteId, beside: true },
        ...{ before: { panelId: before.get(positionId) ?? null }, after: { panelId } },
      });
    }
    return ok(null);
  });
}

type Move = PlaceInPanels["wanted"][number];

async function areOfMachine(tx: Transaction, machineId: string, moves: readonly Move[]): Promise<boolean> {
  const panels = [...new Set(moves.flatMap(({ panelId }) => panelId ?? []))];
  return (await tx.panel.count({ where: { machineId, id: { in: panels } } })) === panels.length;
}

async function siteOfMachine(tx: Transaction, actor: Actor, id: string): Promise<string | null> {
  const machine = await tx.machine.findFirst({
    where: { id, line: atSites(actor, "line:write") },
    select: { line: { select: { siteId: true } } },
  });
  return machine?.line.siteId ?? null;
}

function findPanel(tx: Transaction, actor: Actor, id: string) {
  return tx.panel.findFirst({
    where: { id, machine: { line: atSites(actor, "line:write") } },
    include: { machine: { select: { line: { select: { siteId: true } } } } },
  });
}

async function isTaken(tx: Transaction, key: { readonly machineId: string; readonly designation: string }) {
  return (await tx.panel.count({ where: key })) > 0;
}

const same = (one: PanelWords, other: PanelWords) =>
  one.designation === other.designation && one.name === other.name && one.location === other.location;

function conflict({ designation, name, location }: PanelWords): Refusal {
  const now = `${designation}, name ${valueWord(name)}, location ${valueWord(location)}`;
  return {
    code: "conflict",
    reason: `Somebody else changed this panel since you opened it: ${now}. Nothing was changed; what you typed stays here.`,
  };
}

function movedBy(designations: readonly string[]): Refusal {
  return {
    code: "conflict",
    reason: `Somebody else moved ${designations.join(", ")} since you opened it. Nothing was changed; load the page again.`,
  };
}
