import "server-only";
import { createHash } from "node:crypto";
import type { ClientBase } from "pg";
import { copiedTables, migrationsOf } from "@/lib/data/archive/catalogue";
import {
  type ArchivedTable,
  FORMAT_VERSION,
  hashOfTables,
  MANIFEST_FILE,
  type Manifest,
  manifestSchema,
} from "@/lib/data/archive/manifest";
import { BrokenZip, listZip, unzip, type ZippedFile } from "@/lib/reports/zip/readZip";

/** Why an archive is not taken in, in a sentence for a person; nothing was written. */
export class ArchiveRefusal extends Error {}

/** An archive that was read to its end and is what its manifest says. */
export interface CheckedArchive {
  readonly manifest: Manifest;
  /** The packed file of each table. */
  readonly files: ReadonlyMap<string, ZippedFile>;
}

const LONGEST_MANIFEST = 4 * 1024 * 1024;
const FETCH_ANEW = "Take the copy out again, or fetch the file again.";

/**
 * Reads an archive to its end, without writing anything, and compares all of it with its manifest.
 *
 * @throws {ArchiveRefusal} when it is broken, cut, edited, of another format or of other migrations.
 */
export async function checkArchive(client: ClientBase, path: string): Promise<CheckedArchive> {
  return inWords(async () => {
    const listed = new Map((await listZip(path)).map((file) => [file.name, file]));
    const manifest = await manifestIn(path, listed.get(MANIFEST_FILE));
    await refuseOtherTables(client, manifest);
    for (const table of manifest.tables) await refuseEdited(path, listed, table);
    const known = new Set([MANIFEST_FILE, ...manifest.tables.map(({ file }) => file)]);
    const stray = [...listed.keys()].find((name) => !known.has(name));
    if (stray !== undefined || listed.size !== known.size)
      throw new ArchiveRefusal(
        `The archive holds files its manifest does not name (${stray}). ${FETCH_ANEW}`,
      );
    return { manifest, files: listed };
  });
}

/**
 * What an archive says of itself, without reading the rest.
 *
 * @throws {ArchiveRefusal} when it says nothing, or what Ebbline does not write.
 */
export function readManifest(path: string): Promise<Manifest> {
  return inWords(async () => {
    const files = await listZip(path);
    return manifestIn(
      path,
      files.find(({ name }) => name === MANIFEST_FILE),
    );
  });
}

async function inWords<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof BrokenZip)
      throw new ArchiveRefusal(`The archive cannot be read. ${error.message} ${FETCH_ANEW}`);
    throw error;
  }
}

async function manifestIn(path: string, file: ZippedFile | undefined): Promise<Manifest> {
  if (!file || file.size > LONGEST_MANIFEST)
    throw new ArchiveRefusal(
      `The file has no ${MANIFEST_FILE}: it is no copy of an installation. Choose a file that Ebbline made.`,
    );
  const pieces: Buffer[] = [];
  for await (const piece of unzip(path, file)) pieces.push(piece);
  const read = manifestSchema.safeParse(parsed(Buffer.concat(pieces).toString("utf8")));
  if (!read.success)
    throw new ArchiveRefusal(
      `The ${MANIFEST_FILE} of the archive is not what Ebbline writes (${read.error.issues[0]?.path.join(".")}). ${FETCH_ANEW}`,
    );
  const { version, tables, hash } = read.data;
  if (version !== FORMAT_VERSION)
    throw new ArchiveRefusal(
      `The archive is of format ${version} and this Ebbline reads format ${FORMAT_VERSION}. Use the version that made it.`,
    );
  if (hashOfTables(tables) !== hash)
    throw new ArchiveRefusal(`The ${MANIFEST_FILE} was edited: its overall hash does not fit. ${FETCH_ANEW}`);
  return read.data;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** An archive fits a database with the same migrations and the same tables. */
async function refuseOtherTables(client: ClientBase, { migrations, withSecrets, tables }: Manifest) {
  const own = await migrationsOf(client);
  const level = (found: readonly { name: string }[]) => found.at(-1)?.name ?? "none";
  if (JSON.stringify(own) !== JSON.stringify(migrations))
    throw new ArchiveRefusal(
      `The archive is of migration ${level(migrations)} and this installation of ${level(own)}. Take it in with the version of Ebbline that made it, then update.`,
    );
  const shape = (found: readonly { name: string; columns: readonly string[] }[]) =>
    found.map(({ name, columns }) => `${name}: ${columns.join()}`).sort();
  const wanted = shape(await copiedTables(client, { withSecrets }));
  const got = shape(tables);
  const differing =
    wanted.find((line, at) => line !== got[at]) ?? got.find((line, at) => line !== wanted[at]);
  if (differing !== undefined)
    throw new ArchiveRefusal(
      `The tables of the archive are not those of this installation; the first that differs is ${differing.split(":")[0]}. ${FETCH_ANEW}`,
    );
}

async function refuseEdited(path: string, listed: ReadonlyMap<string, ZippedFile>, table: ArchivedTable) {
  const file = listed.get(table.file);
  if (!file) throw new ArchiveRefusal(`${table.file} is missing in the archive. ${FETCH_ANEW}`);
  const digest = createHash("sha256");
  for await (const piece of unzip(path, file)) digest.update(piece);
  if (digest.digest("hex") !== table.sha256)
    throw new ArchiveRefusal(
      `${table.file} is not as it was taken out: its hash is another than the manifest says. ${FETCH_ANEW}`,
    );
}
