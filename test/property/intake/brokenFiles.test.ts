import { expect, test } from "vitest";
import { dialectOf, openRegister } from "@/lib/intake/openRegister";
import { readRegister } from "@/lib/intake/readRegister";
import { REGISTERS } from "@/lib/intake/registers";
import { toMapping } from "@/lib/intake/suggestMapping";
import { type BrokenFile, brokenFiles } from "@/test/support/brokenFiles";

const SEED = Number(process.env.EBBLINE_TEST_SEED ?? 20_261_130);
const COUNT = 500;
/** One broken file must be done with in this time and this much memory more, on a machine that does other work too. */
const MOST_MS = 8_000;
const MOST_BYTES = 900 * 1024 * 1024;
const CURE =
  /\b(?:Save|Copy|Open|Close|Choose|Delete|Split|Shorten|Move|Unpack|Check|Look|take columns out)\b/;

/** Reads a file as far as the import does before it asks the database. @returns the sentence when it is refused. */
async function readWhole({ bytes }: BrokenFile): Promise<string | null> {
  const register = REGISTERS.stock;
  const opened = await openRegister(bytes, register);
  if (!opened.ok) return opened.error;
  const { body, suggestions } = opened.value;
  const mapping = toMapping(suggestions);
  const { proposal: dialect } = dialectOf(body, mapping, register);
  const reading = readRegister(body, { register, mapping, dialect });
  for (const { rowNumber, problems } of reading.rows) {
    expect(rowNumber).toBeGreaterThan(0);
    for (const { problem, remedy } of problems)
      expect([problem, remedy].every((said) => said !== "")).toBe(true);
  }
  return null;
}

test(`${COUNT} broken files end with a sentence and its cure, none with a crash or a hang (seed ${SEED})`, async () => {
  const start = process.memoryUsage().rss;
  const slowest = { ms: 0, kind: "" };
  let [refused, most] = [0, 0];
  for (const file of brokenFiles(COUNT, SEED)) {
    const began = performance.now();
    const what = `${file.name}, ${file.kind}`;
    const sentence = await readWhole(file).catch((error: unknown) => {
      throw new Error(`${what} broke the reader`, { cause: error });
    });
    if (sentence !== null) {
      refused += 1;
      expect(sentence, what).toMatch(CURE);
      expect(sentence, what).not.toMatch(/undefined|NaN|\[object|Error:/);
    }
    const ms = performance.now() - began;
    if (ms > slowest.ms) Object.assign(slowest, { ms, kind: file.kind });
    most = Math.max(most, process.memoryUsage().rss - start);
  }
  const slow = `slowest ${slowest.ms.toFixed(0)} ms (${slowest.kind})`;
  process.stdout.write(
    `${COUNT} broken files, seed ${SEED}: ${refused} refused, ${slow}, at most ${Math.round(most / 1e6)} MB more\n`,
  );
  expect(refused).toBeGreaterThan(COUNT / 2);
  expect(slowest.ms).toBeLessThan(MOST_MS);
  expect(most).toBeLessThan(MOST_BYTES);
}, 300_000);
