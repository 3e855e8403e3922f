import { describe, expect, test } from "vitest";
import { findDates } from "@/lib/intake/notice/findDates";
import { readNotice } from "@/lib/intake/notice/readNotice";
import { textOfFile } from "@/lib/intake/notice/tableText";
import { partKey } from "@/lib/intake/readPartNumber";
import { PROBLEMS, type ProblemNumber } from "@/seed/dirtyFiles/answerKey";
import { dirtySet } from "@/seed/dirtyFiles/dirtySet";
import { dirtyNotices } from "@/seed/dirtyFiles/notices";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { emptyFindings, type Findings, scoreFile } from "@/test/support/scoreDirty";

const tables = showcase();
const files = dirtySet(tables);
const notices = dirtyNotices();
const catalogue = tables.Part.map(({ number }) => partKey(number));
const parts = tables.Part.map(({ id, number, maker }) => ({ id, number, maker, family: null, aliases: [] }));

/** Below these the importer has become worse than it was when they were written; they only go up. */
const FLOOR = { precision: 0.999, recall: 0.985, kept: 1, notices: 1 };

const share = (part: number, whole: number) => `${part}/${whole} = ${((100 * part) / whole).toFixed(2)} %`;

function print(all: Findings): void {
  const { score, kept, byProblem } = all;
  const lines = [...byProblem]
    .sort(([a], [b]) => a - b)
    .map(([number, { right, shown }]) => `  ${number} ${PROBLEMS[number]}: ${share(right, shown)}`);
  const text = [
    `precision: right of given values ${share(score.right, score.given)}`,
    `recall: right of findable values ${share(score.right, score.findable)}`,
    `rows that must stay out and did: ${share(kept.did, kept.must)}`,
    "taken as meant, by problem:",
    ...lines,
  ].join("\n");
  process.stdout.write(`${text}\n`);
}

describe("the dirty import set", () => {
  test("is six asset registers, six stock exports, three lists, a stop log and two notices, small and the same again", () => {
    const count = (register: string) => files.filter((file) => file.register === register).length;
    expect(["assets", "stock", "scans", "events"].map(count)).toEqual([6, 6, 3, 1]);
    expect(notices).toHaveLength(2);
    expect(files.reduce((sum, { bytes }) => sum + bytes.length, 0)).toBeLessThan(200_000);
    const again = dirtySet(tables);
    for (const [index, { name, bytes }] of files.entries())
      expect(Buffer.compare(bytes, again[index]?.bytes ?? new Uint8Array()), name).toBe(0);
  });

  test("shows at least five problems in each file, and nearly all of them together", () => {
    for (const { name, problems } of [...files, ...notices])
      expect(new Set(problems).size, name).toBeGreaterThanOrEqual(5);
    const shown = new Set<ProblemNumber>([...files, ...notices].flatMap(({ problems }) => problems));
    expect([...shown].sort((a, b) => a - b)).toEqual(Object.keys(PROBLEMS).map(Number));
  });

  test("is read against its key as well as it ever was", async () => {
    const all = emptyFindings();
    for (const file of files) await scoreFile(file, catalogue, all);
    print(all);
    const { score, kept } = all;
    expect(score.findable).toBeGreaterThan(4000);
    expect(score.right / score.given, all.misses.join("\n")).toBeGreaterThanOrEqual(FLOOR.precision);
    expect(score.right / score.findable, all.misses.join("\n")).toBeGreaterThanOrEqual(FLOOR.recall);
    expect(kept.did / kept.must, all.misses.join("\n")).toBeGreaterThanOrEqual(FLOOR.kept);
  });

  test("has notices whose parts, successor and days are found", async () => {
    let [found, findable] = [0, 0];
    for (const notice of notices) {
      const text = await textOfFile(notice.name, notice.bytes);
      if (!text.ok) throw new Error(text.error);
      const said = readNotice(text.value, parts);
      const days = findDates(text.value).flatMap(({ kind, says }) =>
        "readings" in says ? says.readings.map(({ on }) => `${kind} ${on}`) : [],
      );
      const checks = [
        said.maker === notice.maker,
        said.successor === notice.successor,
        ...notice.parts.map((part) => said.patterns.includes(part)),
        ...notice.dates.map(({ what, on }) => days.includes(`${what} ${on}`)),
      ];
      findable += checks.length;
      found += checks.filter(Boolean).length;
      expect(
        said.patterns.filter((part) => !notice.parts.includes(part)),
        notice.name,
      ).toEqual([]);
    }
    process.stdout.write(`notices: found ${share(found, findable)}\n`);
    expect(found / findable).toBeGreaterThanOrEqual(FLOOR.notices);
  });
});
