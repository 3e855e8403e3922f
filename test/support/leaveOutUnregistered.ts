import { database } from "@/lib/data/client";

/** Takes out of a seeded company what no register has a column for, so that loading the registers can equal it. */
export async function leaveOutUnregistered(): Promise<void> {
  await database().line.updateMany({ data: { costSteps: [] } });
  await database().plannedRemoval.deleteMany();
  await database().repairOrder.deleteMany();
}
