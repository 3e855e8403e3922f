import { createWriteStream } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { listZip, unzip } from "@/lib/reports/zip/readZip";
import { writeZip } from "@/lib/reports/zip/writeZip";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "ebbline-zip-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const files: Readonly<Record<string, Buffer>> = {
  "one.txt": Buffer.from("one\n".repeat(50_000)),
  "folder/žluťoučký.csv": Buffer.from("ž;1"),
  "empty.txt": Buffer.alloc(0),
};
const entries = () =>
  Object.entries(files).map(([name, bytes]) => ({
    name,
    content: Readable.from([bytes]) as AsyncIterable<Buffer>,
  }));

async function bytesOf(pieces: AsyncIterable<Buffer>): Promise<Buffer> {
  const all: Buffer[] = [];
  for await (const piece of pieces) all.push(piece);
  return Buffer.concat(all);
}

test("another library reads what is written, byte for byte, and the same content gives the same archive", async () => {
  const written = await bytesOf(writeZip(entries()));
  const read = unzipSync(written);
  expect(Object.keys(read)).toEqual(Object.keys(files));
  for (const [name, bytes] of Object.entries(files)) expect(Buffer.from(read[name] ?? [])).toEqual(bytes);
  expect(await bytesOf(writeZip(entries()))).toEqual(written);
});

test("what is written is read again, and what another library wrote too", async () => {
  const path = join(folder, "own.zip");
  await pipeline(writeZip(entries()), createWriteStream(path));
  const other = join(folder, "other.zip");
  await writeFile(other, zipSync({ "one.txt": new Uint8Array(files["one.txt"] ?? []) }));
  for (const from of [path, other])
    for (const file of await listZip(from))
      expect(await bytesOf(unzip(from, file))).toEqual(files[file.name]);
});

test("a file that says it is smaller than it is stops at its size", async () => {
  const path = join(folder, "own.zip");
  const [first] = await listZip(path);
  if (!first) throw new Error("nothing listed");
  await expect(bytesOf(unzip(path, { ...first, size: 1000 }))).rejects.toThrow(
    "holds more than the list says",
  );
  await expect(bytesOf(unzip(path, { ...first, crc: first.crc ^ 1 }))).rejects.toThrow("is damaged");
});

test("what is no archive is said to be none", async () => {
  const path = join(folder, "none.zip");
  for (const text of ["", "PK", "x".repeat(100_000)]) {
    await writeFile(path, text);
    await expect(listZip(path)).rejects.toThrow("It is no ZIP archive");
  }
});
