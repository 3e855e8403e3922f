import "server-only";
import { database } from "@/lib/data/client";

/** Whether the database answers a question now. Asked by machines, so without an actor. */
export async function answersNow(): Promise<boolean> {
  try {
    await database().$queryRaw`SELECT 1`;
    return true;
  } catch {
    return false;
  }
}
