import "server-only";
import { randomUUID } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import type { Row } from "@/lib/data/intake/writers";
import type { SightStep } from "@/lib/data/sighting/steps";
import { partKey } from "@/lib/intake/readPartNumber";
import type { SightField } from "@/lib/intake/sightings/compareDevice";
import type { SightFinding } from "@/lib/intake/sightings/compareSources";
import type { RegisterItem, SeenDevice } from "@/lib/intake/sightings/device";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import type { Prisma } from "@/prisma/generated/client";

type Steps = Result<SightStep[], Refusal>;

const impossible = (reason: string) => err<Refusal>({ code: "impossible", reason });

/** What the register has to become so that it says what the list saw, with the day it was seen as evidence. */
export async function takeOverSteps(tx: Transaction, finding: SightFinding): Promise<Steps> {
  const { item, device } = finding;
  if (item === null || device === null) return impossible("There is nothing on record this could change.");
  return item.kind === "controller" ? controllerSteps(tx, item, finding) : placeSteps(tx, item, device);
}

/** Only what was found apart is written: another spelling of the model on record stays. */
async function controllerSteps(
  tx: Transaction,
  { id }: RegisterItem,
  { device, differences }: SightFinding,
): Promise<Steps> {
  const stored = await tx.controller.findUniqueOrThrow({ where: { id } });
  const seenOf = (field: SightField) => differences.find((one) => one.field === field)?.seen ?? null;
  const [firmware, model] = [seenOf("firmware"), seenOf("number")];
  const level = parseFirmwareLevel(firmware);
  const after: Row = {
    ...(level.state === "unknown" ? {} : { firmware: Number(level.parts[0]), firmwareRaw: firmware }),
    ...(model === null ? {} : { model }),
    ...{ readOn: device?.lastOn ?? null, evidence: "measured" },
  };
  const before: Row = {
    ...{ firmware: stored.firmware, firmwareRaw: stored.firmwareRaw, model: stored.model },
    ...{ readOn: dayOf(stored.readOn), evidence: stored.evidence },
  };
  return ok([step(["Controller", id], pick(before, after), after)]);
}

const placeParts = {
  placements: { where: { untilOn: null }, include: { unit: { include: { part: true } } } },
  part: true,
} satisfies Prisma.PositionInclude;
type Place = Prisma.PositionGetPayload<{ include: typeof placeParts }>;

async function placeSteps(tx: Transaction, { id }: RegisterItem, device: SeenDevice): Promise<Steps> {
  const place = await tx.position.findUniqueOrThrow({ where: { id }, include: placeParts });
  const [standing] = place.placements;
  const partId = await partSeen(tx, place, device);
  if (!partId.ok) return partId;
  const read: Row = { evidence: "measured", partId: partId.value };
  const graded = step(["Position", id], { evidence: place.evidence, partId: place.partId }, read);
  const sameUnit =
    standing?.unit.partId === partId.value &&
    (device.serial === "" || partKey(standing.unit.serial) === partKey(device.serial));
  if (sameUnit) return ok([...revisionStep(standing.unit, device), graded]);
  const moved = await exchangeSteps(tx, { place, device, partId: partId.value });
  return moved.ok ? ok([...moved.value, graded]) : moved;
}

/** The part the number names, or the one on record where none was seen. */
async function partSeen(tx: Transaction, place: Place, { number, revision }: SeenDevice) {
  const here = place.placements[0]?.unit.part ?? place.part;
  if (number === "")
    return here ? ok(here.id) : impossible("The list gives no number, and none is on record for this place.");
  const keys = [partKey(number), partKey(number + revision)];
  if (here && keys.includes(partKey(here.number))) return ok(here.id);
  const known = await tx.$queryRaw<{ id: string }[]>`
    SELECT DISTINCT part."id"::text AS "id" FROM "Part" part LEFT JOIN "PartAlias" a ON a."partId" = part."id"
    WHERE upper(regexp_replace(part."number", '[^[:alnum:]]', '', 'g')) = ANY(${keys}::text[])
      OR upper(regexp_replace(a."alias", '[^[:alnum:]]', '', 'g')) = ANY(${keys}::text[])`;
  const [only] = known;
  if (known.length === 1 && only) return ok(only.id);
  return impossible(
    known.length === 0
      ? `No part ${number} is on record. Load it with the supply dates first, then take it over.`
      : `More than one part on record is called ${number}. Merge them or keep the register as it is.`,
  );
}

interface Exchange {
  readonly place: Place;
  readonly device: SeenDevice;
  readonly partId: string;
}

/** Ends the stay on record, and that of the unit seen wherever it was, and starts its stay here on the day it was seen. */
async function exchangeSteps(tx: Transaction, { place, device, partId }: Exchange): Promise<Steps> {
  const day = device.lastOn;
  const known = device.serial === "" ? null : await unitSeen(tx, partId, device.serial);
  const ended = [...place.placements, ...(known?.placements ?? [])];
  if (ended.some(({ fromOn }) => fromOn !== null && (dayOf(fromOn) ?? "") >= day))
    return impossible(
      "A unit on record was put in on the day of the list or later: the list is the older word.",
    );
  const ends = ended.map(({ id }) => step(["Placement", id], { untilOn: null }, { untilOn: day }));
  if (device.serial === "") return ok(ends);
  const unitId = known?.id ?? randomUUID();
  const revision = device.revision === "" ? null : device.revision;
  const made = { id: unitId, partId, serial: device.serial, revision };
  const stay = { id: randomUUID(), unitId, positionId: place.id, fromOn: day, untilOn: null };
  return ok([
    ...ends,
    ...(known ? revisionStep(known, device) : [step(["Unit", unitId], null, made)]),
    step(["Placement", stay.id], null, stay),
  ]);
}

/** The unit on record with this serial number, however it is spelt there. */
async function unitSeen(tx: Transaction, partId: string, serial: string) {
  const [found] = await tx.$queryRaw<{ id: string }[]>`
    SELECT "id"::text AS "id" FROM "Unit" WHERE "partId" = ${partId}::uuid
      AND upper(regexp_replace("serial", '[^[:alnum:]]', '', 'g')) = ${partKey(serial)} ORDER BY "id" LIMIT 1`;
  if (!found) return null;
  const standing = { placements: { where: { untilOn: null } } };
  return tx.unit.findUniqueOrThrow({ where: { id: found.id }, include: standing });
}

function revisionStep(
  unit: { readonly id: string; readonly revision: string | null },
  { revision }: SeenDevice,
): SightStep[] {
  if (revision === "" || unit.revision === revision) return [];
  return [step(["Unit", unit.id], { revision: unit.revision }, { revision })];
}

/** A row changed, or added where nothing was before. */
function step(
  [entity, id]: readonly [SightStep["entity"], string],
  before: Row | null,
  after: Row,
): SightStep {
  return { entity, id, before: before && { ...before }, after: { ...after } };
}

const pick = (from: Row, like: Row): Row =>
  Object.fromEntries(Object.keys(like).map((field) => [field, from[field] ?? null]));

const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;
