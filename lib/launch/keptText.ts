import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";

/** Text kept in a file that only its owner may read; made at the first call. */
export function keptText(file: string, make: () => string): string {
  if (!existsSync(file)) keepText(file, make());
  return readFileSync(file, "utf8");
}

/** Writes a file only its owner may read, whole or not at all. */
export function keepText(file: string, text: string): void {
  writeFileSync(`${file}.new`, text, { mode: 0o600 });
  renameSync(`${file}.new`, file);
}
