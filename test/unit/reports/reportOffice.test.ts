import { spawnSync } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { reportWorkbook } from "@/lib/reports/reportWorkbook";
import { DANGEROUS, FOREIGN, sample } from "@/test/support/reportSample";

const OFFICE = "soffice";
const isInstalled = spawnSync(OFFICE, ["--version"]).status === 0;
/** Every sheet as CSV: comma, quote, UTF-8, values as kept and not as shown. */
const EVERY_SHEET = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1";
const PATIENCE_MS = 120_000;

// Where LibreOffice is not installed, reportFiles.test.ts reads the same cells by a parser.
test.runIf(isInstalled)(
  "LibreOffice reads the numbers of the workbook and runs none of its names",
  async () => {
    const folder = await mkdtemp(join(tmpdir(), "ebbline-office-"));
    await writeFile(join(folder, "report.xlsx"), await reportWorkbook(sample, "https://plant.example"));
    const own = `-env:UserInstallation=file://${folder}/profile`;
    const { status } = spawnSync(
      OFFICE,
      [own, "--headless", "--convert-to", EVERY_SHEET, "--outdir", folder, join(folder, "report.xlsx")],
      { timeout: PATIENCE_MS },
    );
    expect(status).toBe(0);
    const files = await readdir(folder);
    const sheet = async (name: string) => {
      const file = files.find((one) => one.endsWith(`-${name}.csv`)) ?? "";
      return parse(await readFile(join(folder, file)), { relax_column_count: true }) as string[][];
    };
    const lines = await sheet("Lines");
    expect(lines.map(([name]) => name).slice(1)).toEqual([
      ...DANGEROUS.map((name) => (/^[=+\-@\t]/.test(name) ? `'${name}` : name)),
      FOREIGN,
    ]);
    expect(lines.slice(1).map((row) => Number(row[1]))).toEqual(
      [...DANGEROUS, FOREIGN].map((_, place) => 123_456.75 + place),
    );
    const projects = await sheet("Projects");
    expect(projects[1]?.slice(1, 6).map(Number)).toEqual([4_900_000, Number.NaN, 0.75, 0.79, 12]);
    await rm(folder, { recursive: true });
  },
  PATIENCE_MS,
);
