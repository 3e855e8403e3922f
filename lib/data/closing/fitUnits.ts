import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { PlaceSteps } from "@/lib/schema/closing";
import type { FittedUnit, Prisma, RemovedUnit } from "@/prisma/generated/client";

const standingParts = {
  placements: { where: { untilOn: null }, include: { unit: true } },
} satisfies Prisma.PositionInclude;

type Place = Prisma.PositionGetPayload<{ include: typeof standingParts }>;

interface Fitting {
  readonly fitted: FittedUnit;
  readonly place: Place;
  /** The unit that came out of the place, if one is recorded. */
  readonly removed: RemovedUnit | null;
}

type Steps = { -readonly [K in keyof PlaceSteps]: PlaceSteps[K] };

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;

/** Puts the units a project fitted into the installed base, where they do not stand there already. */
export async function fitUnits(
  tx: Transaction,
  { fitted, removed }: { readonly fitted: readonly FittedUnit[]; readonly removed: readonly RemovedUnit[] },
): Promise<Result<PlaceSteps, Refusal>> {
  const steps: Steps = { ended: [], placed: [], unitsMade: [], places: [] };
  const ids = fitted.map(({ positionId }) => positionId);
  await tx.$queryRaw`SELECT "id" FROM "Position" WHERE "id" = ANY(${ids}::uuid[]) ORDER BY "id" FOR UPDATE`;
  const places = await tx.position.findMany({ where: { id: { in: ids } }, include: standingParts });
  const placeOf = new Map(places.map((place) => [place.id, place]));
  const removedOf = new Map(removed.map((unit) => [unit.positionId, unit]));
  for (const unit of fitted) {
    const place = placeOf.get(unit.positionId);
    if (!place || stands(unit, place)) continue;
    const refused = await fitOne(
      tx,
      { fitted: unit, place, removed: removedOf.get(place.id) ?? null },
      steps,
    );
    if (refused) return err(refused);
  }
  return ok(steps);
}

/** Whether a unit stands where it was fitted. */
export function stands({ partId, serial }: FittedUnit, { placements }: Pick<Place, "placements">): boolean {
  return placements.some(({ unit }) => unit.partId === partId && unit.serial === serial);
}

async function fitOne(tx: Transaction, fitting: Fitting, steps: Steps): Promise<Refusal | null> {
  const { fitted, place } = fitting;
  const refused = (await endStay(tx, fitting, steps)) ?? (await putIn(tx, fitting, steps));
  if (refused) return refused;
  await tx.position.update({
    where: { id: place.id },
    data: { partId: fitted.partId, evidence: "measured" },
  });
  const { partId: partBefore, evidence: evidenceBefore } = place;
  steps.places.push({ positionId: place.id, partBefore, evidenceBefore, partAfter: fitted.partId });
  return null;
}

/** Ends the stay of the old unit; one no record placed there is written down with its serial, if that was read. */
async function endStay(tx: Transaction, { fitted, place, removed }: Fitting, steps: Steps) {
  const [standing] = place.placements;
  if (standing) {
    if ((dayOf(standing.fromOn) ?? "") >= (dayOf(fitted.fittedOn) ?? "")) return sameDay(place);
    await tx.placement.update({ where: { id: standing.id }, data: { untilOn: fitted.fittedOn } });
    steps.ended.push(standing.id);
    return null;
  }
  if (removed === null || removed.serial === "") return null;
  const { partId, serial, revision, removedOn } = removed;
  const unitId = await unitOf(tx, { partId, serial, revision }, steps);
  const stay = await tx.placement.create({ data: { unitId, positionId: place.id, untilOn: removedOn } });
  steps.placed.push({ id: stay.id, untilOn: dayOf(removedOn) });
  return null;
}

function sameDay({ designation }: Place): Refusal {
  return {
    code: "impossible",
    reason: `The unit that stands at ${designation} was put in on the day the new one was, or later. Correct one of the two first.`,
  };
}

async function putIn(tx: Transaction, { fitted, place }: Fitting, steps: Steps): Promise<Refusal | null> {
  const { partId, serial, revision, fittedOn } = fitted;
  const elsewhere = await tx.placement.findFirst({
    where: { untilOn: null, unit: { partId, serial } },
    select: { position: { select: { designation: true, machine: { select: { code: true } } } } },
  });
  if (elsewhere) {
    const { designation, machine } = elsewhere.position;
    return {
      code: "impossible",
      reason: `Serial ${serial} stands at ${machine.code} ${designation} in Ebbline. Read the plate again, or take it out there first.`,
    };
  }
  const unitId = await unitOf(tx, { partId, serial, revision }, steps);
  const stay = await tx.placement.create({ data: { unitId, positionId: place.id, fromOn: fittedOn } });
  steps.placed.push({ id: stay.id, untilOn: null });
  return null;
}

interface Plate {
  readonly partId: string;
  readonly serial: string;
  readonly revision: string;
}

/** The unit of a plate, made when nobody knows it yet. */
async function unitOf(tx: Transaction, { partId, serial, revision }: Plate, steps: Steps): Promise<string> {
  const known = await tx.unit.findUnique({ where: { partId_serial: { partId, serial } } });
  if (known) return known.id;
  const made = await tx.unit.create({
    data: { partId, serial, revision: revision === "" ? null : revision },
  });
  steps.unitsMade.push(made.id);
  return made.id;
}

const builtOn: Refusal = {
  code: "conflict",
  reason: "A unit the closing put in was moved, or its place changed since. Nothing was taken back.",
};

/** Puts places and units back as they were before a closing; refused once somebody built on it. */
export async function takeUnitsOut(tx: Transaction, steps: PlaceSteps): Promise<Result<null, Refusal>> {
  for (const { positionId, partBefore, partAfter, evidenceBefore } of steps.places) {
    const { count } = await tx.position.updateMany({
      where: { id: positionId, partId: partAfter },
      data: { partId: partBefore, evidence: evidenceBefore },
    });
    if (count === 0) return err(builtOn);
  }
  for (const { id, untilOn } of steps.placed) {
    const as = { id, untilOn: untilOn === null ? null : new Date(`${untilOn}T00:00:00Z`) };
    if ((await tx.placement.deleteMany({ where: as })).count === 0) return err(builtOn);
  }
  const made = { id: { in: steps.unitsMade }, placements: { none: {} } };
  if ((await tx.unit.deleteMany({ where: made })).count < steps.unitsMade.length) return err(builtOn);
  await tx.placement.updateMany({ where: { id: { in: steps.ended } }, data: { untilOn: null } });
  return ok(null);
}
