import type { Client } from "pg";
import { ArchiveRefusal } from "@/lib/data/archive/checkArchive";
import { connect } from "../connect";
import { Refusal } from "../refusal";

/** Works on the database at `url` and closes the connection; a refused archive ends the command in its sentence. */
export async function connected<T>(url: string, run: (client: Client) => Promise<T>): Promise<T> {
  const client = await connect(url);
  try {
    return await run(client);
  } catch (error) {
    throw error instanceof ArchiveRefusal ? new Refusal(error.message) : error;
  } finally {
    await client.end();
  }
}
