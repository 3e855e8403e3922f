import "server-only";
import { createHash } from "node:crypto";
import { z } from "zod";

export const FORMAT = "ebbline-installation";
/** Raised when an older Ebbline could not read a newer archive. */
export const FORMAT_VERSION = 1;
export const MANIFEST_FILE = "manifest.json";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

const archivedTable = z.strictObject({
  name: z.string().min(1),
  file: z.string().min(1),
  columns: z.array(z.string()).min(1),
  rows: z.int().min(0),
  sha256,
});

/** What an archive says of itself; its last file. */
export const manifestSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.int(),
  madeAt: z.iso.datetime(),
  withSecrets: z.boolean(),
  /** Count of changes of the installation when it was made. */
  dataVersion: z.string().regex(/^\d+$/),
  migrations: z.array(z.strictObject({ name: z.string(), checksum: z.string() })),
  tables: z.array(archivedTable),
  /** Table and reason, for whoever opens the archive. */
  leftOut: z.record(z.string(), z.string()),
  hash: sha256,
});

export type ArchivedTable = z.output<typeof archivedTable>;
export type Manifest = z.output<typeof manifestSchema>;

/**
 * One hash of all that the tables hold, SHA-256 in hex.
 *
 * Each table's own hash is of its rows in the order of their keys, written in the same words on every server;
 * so neither the order in which rows lie in the database, nor its zone, nor its version shows.
 */
export function hashOfTables(tables: readonly ArchivedTable[]): string {
  const lines = tables.map(({ name, columns, rows, sha256: own }) =>
    [name, columns.join(), rows, own].join("\t"),
  );
  return createHash("sha256").update(lines.sort().join("\n")).digest("hex");
}
