import { Client } from "pg";

/** Takes out of a seeded company what no register has a column for, so that loading the registers can equal it. */
export async function leaveOutUnregistered(url: string): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(`UPDATE "Line" SET "costSteps" = '[]'`);
    await client.query(`DELETE FROM "PlannedRemoval"`);
    await client.query(`DELETE FROM "RepairOrder"`);
  } finally {
    await client.end();
  }
}
