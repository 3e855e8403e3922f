import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import type { Project } from "@/prisma/generated/client";

export const noUnit: Refusal = {
  code: "missing",
  reason: "There is no such unit in a project you may change.",
};
export const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else wrote this unit since you opened it. What you typed is still here; load the page in another window to see theirs.",
};
export const noPart: Refusal = {
  code: "invalid",
  reason: "No part, or more than one, is known by this number. Nothing was kept.",
  fields: { plate: "Write the number of a part on record." },
};
export const noPlace: Refusal = {
  code: "invalid",
  reason: "This place is no drive place of the project's line. Nothing was kept.",
  fields: { positionId: "Choose a place of the list." },
};

/** A day that has not come yet. */
export function liesAhead(field: string): Refusal {
  const fields = { [field]: "Write the day it happened." };
  return { code: "invalid", reason: "The day lies in the future. Nothing was kept.", fields };
}

/** Whether a place holds a drive of the project's line. */
export async function isDrivePlace(
  tx: Transaction,
  { lineId }: Project,
  positionId: string,
): Promise<boolean> {
  return (
    (await tx.position.count({ where: { id: positionId, itemClass: "drive", machine: { lineId } } })) > 0
  );
}
