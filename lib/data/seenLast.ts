import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import { type AtSite, loadDevices, loadRegisterItems } from "@/lib/data/sighting/loadSources";
import { DeviceMatcher } from "@/lib/intake/sightings/matchDevices";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PlaceSight, SeenLast, SourceDay } from "@/lib/view/seenLast";

/** When each source last spoke of a machine; null when the person may not read its site. */
export async function readSeenLast(
  actor: Actor,
  { machineId, asOf }: { readonly machineId: string; readonly asOf: IsoDate },
): Promise<SeenLast | null> {
  const machine = await database().machine.findFirst({
    where: { id: machineId, line: atSites(actor, "read") },
    select: { retiredOn: true, retiredReason: true, line: { select: { siteId: true } } },
  });
  if (machine === null) return null;
  const [places, [days]] = await Promise.all([
    readPlaces({ siteId: machine.line.siteId, asOf }, machineId),
    readDays(machineId, asOf),
  ]);
  const lists = places.map(({ lastOn }) => lastOn).sort();
  const { readOn, surveyedOn, eventOn, exchangedOn, copiedOn, filedOn } = days ?? NEVER;
  const sources: SourceDay[] = [
    { source: "Network lists", lastOn: lists.at(-1) ?? null },
    { source: "Controller read", lastOn: readOn },
    { source: "Axes surveyed", lastOn: surveyedOn },
    { source: "Events", lastOn: eventOn },
    { source: "Units exchanged", lastOn: exchangedOn },
    { source: "Copies taken", lastOn: copiedOn },
    { source: "Register files, when one last changed it", lastOn: filedOn },
  ];
  return {
    retiredOn: machine.retiredOn?.toISOString().slice(0, 10) ?? null,
    ...{ retiredReason: machine.retiredReason, sources, places },
  };
}

interface Days {
  readonly readOn: IsoDate | null;
  readonly surveyedOn: IsoDate | null;
  readonly eventOn: IsoDate | null;
  readonly exchangedOn: IsoDate | null;
  readonly copiedOn: IsoDate | null;
  readonly filedOn: IsoDate | null;
}

const NEVER: Days = {
  ...{ readOn: null, surveyedOn: null, eventOn: null, exchangedOn: null, copiedOn: null, filedOn: null },
};

function readDays(machineId: string, asOf: IsoDate): Promise<Days[]> {
  return database().$queryRaw<Days[]>`
    WITH own AS (
      SELECT m."id", m."controllerId" FROM "Machine" m WHERE m."id" = ${machineId}::uuid
    ), place AS (
      SELECT p."id" FROM "Position" p WHERE p."machineId" = ${machineId}::uuid
    ), axis AS (
      SELECT a."id", greatest(a."powerCableReadOn", a."feedbackCableReadOn", a."travelReadOn", a."homingReadOn") AS "on"
      FROM "Axis" a WHERE a."machineId" = ${machineId}::uuid
    ), stay AS (
      SELECT pl."fromOn" AS "on" FROM "Placement" pl JOIN place ON place."id" = pl."positionId"
      UNION ALL
      SELECT pl."untilOn" FROM "Placement" pl JOIN place ON place."id" = pl."positionId"
    ), entity AS (
      SELECT 'Machine' AS "entity", "id"::text AS "id" FROM own UNION ALL SELECT 'Position', "id"::text FROM place
      UNION ALL SELECT 'Axis', "id"::text FROM axis
    )
    SELECT
      (SELECT c."readOn" FROM "Controller" c, own WHERE c."id" = own."controllerId" AND c."readOn" <= ${asOf}::date)::text AS "readOn",
      (SELECT max("on") FROM axis WHERE "on" <= ${asOf}::date)::text AS "surveyedOn",
      (SELECT max(e."happenedAt") FROM "Event" e WHERE e."machineId" = ${machineId}::uuid AND e."setAside" IS NULL
        AND e."happenedAt" < ${asOf}::date + 1)::date::text AS "eventOn",
      (SELECT max("on") FROM stay WHERE "on" <= ${asOf}::date)::text AS "exchangedOn",
      (SELECT max(b."takenOn") FROM "Backup" b, own WHERE b."controllerId" = own."controllerId"
        AND b."takenOn" <= ${asOf}::date)::text AS "copiedOn",
      (SELECT max(b."committedAt") FROM "ImportChange" i JOIN entity ON entity."entity" = i."entity" AND entity."id" = i."entityId"
        JOIN "ImportBatch" b ON b."id" = i."batchId" AND b."state" = 'committed')::date::text AS "filedOn"`;
}

/** What lists saw of a machine's places and controller, each place and source once, the latest day first. */
async function readPlaces(at: AtSite, machineId: string): Promise<PlaceSight[]> {
  const items = await loadRegisterItems(database(), at, machineId);
  const given = (values: readonly (string | null)[]) => [...new Set(values.filter((one) => one !== null))];
  const devices = await loadDevices(database(), at, {
    places: given(items.flatMap(({ network, controller }) => [network, controller])),
    serials: given(items.map(({ serial }) => serial)),
  });
  const matcher = new DeviceMatcher(items);
  const found = new Map<string, PlaceSight>();
  for (const device of devices) {
    const item = matcher.match(device)?.item;
    if (!item) continue;
    const { source, lastOn, firmware } = device;
    const key = `${item.id} ${source}`;
    const known = found.get(key);
    if (known === undefined || known.lastOn < lastOn)
      found.set(key, { place: item.designation, serial: item.serial, source, lastOn, firmware });
  }
  return [...found.values()].sort(
    (a, b) => a.place.localeCompare(b.place) || b.lastOn.localeCompare(a.lastOn),
  );
}
