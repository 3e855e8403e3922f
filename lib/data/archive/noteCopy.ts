import "server-only";
import type { ClientBase } from "pg";
import type { Manifest } from "@/lib/data/archive/manifest";

interface Copied {
  readonly direction: "out" | "in";
  /** Name of the person; null is the command line. */
  readonly by: string | null;
  readonly manifest: Manifest;
}

/** Writes down that a copy left the installation or filled it. */
export async function noteCopy(client: ClientBase, { direction, by, manifest }: Copied): Promise<void> {
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  await client.query(
    `INSERT INTO "WholeCopy" ("id", "direction", "by", "hash", "withSecrets", "rows")
     VALUES (gen_random_uuid(), $1::"CopyDirection", $2, $3, $4, $5)`,
    [direction, by, manifest.hash, manifest.withSecrets, rows],
  );
}
