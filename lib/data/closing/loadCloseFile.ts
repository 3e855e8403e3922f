import "server-only";
import type { Transaction } from "@/lib/data/change";
import { stands } from "@/lib/data/closing/fitUnits";
import { loadCloseRecords } from "@/lib/data/closing/loadCloseRecords";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { CloseFacts } from "@/lib/projects/closeOut";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import type { CloseFile, FittedRow, RemovedRow } from "@/lib/view/closeOut";
import type { AxisEntry, Project } from "@/prisma/generated/client";

const dayOf = (date: Date | null | undefined): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;

type Records = Awaited<ReturnType<typeof loadCloseRecords>>;
type AxisOf = Records["axes"][number];

/** What the records say of a project that is to be closed, and the rows they say it in. */
export async function loadCloseFile(tx: Transaction, project: Project): Promise<CloseFile> {
  const records = await loadCloseRecords(tx, project);
  const removed = records.removed.map(removedRow);
  return {
    facts: factsOf(records, removed),
    removed,
    fitted: records.fitted.map(fittedRow),
    places: records.axes.flatMap(({ machine, code, positions }) =>
      positions.map(({ id, designation, part }) => ({
        ...{ id, name: `${machine.code} ${code} ${designation}`, part: part?.number ?? null },
      })),
    ),
    statements: records.statements.map(({ kind, statedBy, statedOn, note }) => ({
      ...{ kind, statedBy, note, statedOn: dayOf(statedOn) ?? "" },
    })),
    seen: [...records.removed, ...records.fitted].reduce((sum, { version }) => sum + version, 0),
  };
}

function factsOf(records: Records, removed: readonly RemovedRow[]): CloseFacts {
  const { axes, fitted, standing, statements, points, gates, commitments } = records;
  const fittedAt = new Map(fitted.map((unit) => [unit.positionId, unit]));
  const cameFrom = new Set(removed.map(({ positionId }) => positionId));
  return {
    axes: axes.map((axis) => ({
      ...{ id: axis.id, name: nameOf(axis), acceptedOn: dayOf(axis.records[0]?.acceptedOn) },
      unsigned: unsignedOf(axis.records[0]?.entries ?? []),
    })),
    places: axes.flatMap((axis) =>
      axis.positions.map(({ id, designation }) => ({
        ...{ id, name: `${nameOf(axis)} ${designation}`, fitted: fittedAt.get(id) ?? null },
        cameOut: cameFrom.has(id),
      })),
    ),
    standing,
    removed: removed.map(({ id, part, serial, place, result, bin }) => ({
      ...{ id, result, bin },
      name: serial === "" ? `${part} without serial${place ? `, from ${place}` : ""}` : `${part} ${serial}`,
    })),
    controllers: controllersOf(axes),
    stated: statements.map(({ kind }) => kind),
    points: points.map(({ id, what, blocks, doneOn }) => ({ id, name: what, blocks, done: doneOn !== null })),
    commitments,
    gates: gates.map(({ id, name, decision }) => ({ id, name, passed: decision === "passed" })),
  };
}

const nameOf = ({ machine, code }: AxisOf): string => `${machine.code} ${code}`;

/** Safety checks that apply and do not carry two different names. */
function unsignedOf(entries: readonly AxisEntry[]): number {
  const written = new Map(entries.map((entry) => [entry.checkId, entry]));
  return axisChecks.filter(({ id, twoNames }) => {
    const entry = written.get(id);
    if (!twoNames || (entry && entry.notApplicable !== "")) return false;
    return !entry || entry.by === "" || entry.witness === "" || entry.by === entry.witness;
  }).length;
}

/** The check a tuned axis has readings of. */
const TUNED_BY = "following";

/** Days an axis was tuned on, by its steps and by its record. */
function tunedDays({ records, projectSteps }: AxisOf): IsoDate[] {
  const read = records
    .flatMap(({ entries }) => entries)
    .filter(({ checkId, asLeft }) => checkId === TUNED_BY && asLeft.length > 0);
  return [...projectSteps.map(({ doneOn }) => doneOn), ...read.map(({ on }) => on)].flatMap(
    (date) => dayOf(date) ?? [],
  );
}

/** Each machine's controller with the last tuning of its axes; the copy is one of the program or the parameters. */
function controllersOf(axes: readonly AxisOf[]): CloseFacts["controllers"] {
  const found = new Map<string, CloseFacts["controllers"][number]>();
  for (const axis of axes) {
    const { id, controller } = axis.machine;
    if (!controller) continue;
    const before = found.get(controller.id);
    const days = [...tunedDays(axis), ...(before?.tunedOn ? [before.tunedOn] : [])];
    found.set(controller.id, {
      ...{ id: before?.id ?? id, name: `${controller.designation} ${controller.model}` },
      tunedOn: days.sort().at(-1) ?? null,
      backupOn: dayOf(controller.backups[0]?.takenOn),
    });
  }
  return [...found.values()];
}

function removedRow(row: Records["removed"][number]): RemovedRow {
  const { id, version, positionId, serial, revision, result, testedBy, how, bin, part, position } = row;
  return {
    ...{ id, version, positionId, serial, revision, result, testedBy, how, bin, part: part.number },
    partId: row.partId,
    place: position ? `${position.machine.code} ${position.axis?.code ?? ""} ${position.designation}` : null,
    removedOn: dayOf(row.removedOn) ?? "",
    testedOn: dayOf(row.testedOn),
  };
}

function fittedRow(row: Records["fitted"][number]): FittedRow {
  const { id, version, positionId, serial, revision, firmware, added, part, position } = row;
  return {
    ...{ id, version, positionId, serial, revision, firmware, added, part: part.number },
    partId: row.partId,
    place: `${position.machine.code} ${position.axis?.code ?? ""} ${position.designation}`,
    fittedOn: dayOf(row.fittedOn) ?? "",
    inBase: stands(row, position),
  };
}
