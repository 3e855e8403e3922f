import "server-only";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { Prisma } from "@/prisma/generated/client";

/** Condition on a place `p` and its machine `m`: neither was retired by the day, so the place counts. */
export function inService(asOf: IsoDate): Prisma.Sql {
  return Prisma.sql`coalesce(least(p."retiredOn", m."retiredOn") > ${asOf}::date, true)`;
}

/** Condition on a machine `m` alone. */
export function machineInService(asOf: IsoDate): Prisma.Sql {
  return Prisma.sql`coalesce(m."retiredOn" > ${asOf}::date, true)`;
}
