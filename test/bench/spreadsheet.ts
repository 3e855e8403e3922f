import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import type { Measured } from "@/test/bench/table";

const ROWS = 50_000;
const NAME = "no-spare chance, rows a second, against a spreadsheet without a window";

interface Row {
  readonly a: number;
  readonly b: number;
  readonly exposure: number;
  readonly pieces: number;
}

const ROW_LIST: readonly Row[] = Array.from({ length: ROWS }, (_, i) => ({
  a: 1 + (i % 90),
  b: 100 + (i % 400),
  exposure: 5 + (i % 300),
  pieces: 1 + (i % 12),
}));

/** A sheet of the same figures: P(X >= K) of the gamma-Poisson count is 1 - I_{b / (b + e)}(a, K). */
function sheet(): string {
  const cell = (value: number) => `<table:table-cell office:value-type="float" office:value="${value}"/>`;
  const rows = ROW_LIST.map(({ a, b, exposure, pieces }, i) => {
    const n = i + 1;
    const formula = `of:=1-BETADIST([.B${n}]/([.B${n}]+[.C${n}]);[.A${n}];[.D${n}])`;
    const cells = [a, b, exposure, pieces].map(cell).join("");
    return `<table:table-row>${cells}<table:table-cell table:formula="${formula}" office:value-type="float"/></table:table-row>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
  xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"
  xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.3"
  office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>
<table:table table:name="chances">${rows.join("\n")}</table:table></office:spreadsheet></office:body></office:document>`;
}

/** Seconds our own function takes, with its answers. */
function ours(): { readonly seconds: number; readonly chances: readonly number[] } {
  const from = performance.now();
  const chances = ROW_LIST.map(({ pieces, ...demand }) => {
    const shelf = new Array<number>(pieces + 1).fill(0);
    shelf[pieces] = 1;
    return noSpareChance(demand, shelf);
  });
  return { seconds: (performance.now() - from) / 1000, chances };
}

/** Seconds to open the sheet, compute it and write it as text, start of the program included; checks its answers. */
function theirs(program: string, expected: readonly number[]): number {
  const folder = mkdtempSync(join(tmpdir(), "ebbline-sheet-"));
  try {
    writeFileSync(join(folder, "chances.fods"), sheet());
    const from = performance.now();
    const options = ["--headless", "--convert-to", "csv", "--outdir", folder, join(folder, "chances.fods")];
    const { status } = spawnSync(program, options);
    const seconds = (performance.now() - from) / 1000;
    if (status !== 0) throw new Error(`${program} ended with ${status}`);
    const answers = readFileSync(join(folder, "chances.csv"), "utf8").trim().split("\n");
    const last = Number(answers.at(-1)?.split(",").at(-1));
    if (!(Math.abs(last - (expected.at(-1) ?? Number.NaN)) < 0.01))
      throw new Error(`the sheet computed ${last} where ${expected.at(-1)} was expected`);
    return seconds;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Rows a second of the same no-spare chances by LibreOffice without a window and by ours. */
export async function measureSpreadsheet(): Promise<Measured> {
  const program = ["soffice", "libreoffice"].find((name) => spawnSync(name, ["--version"]).status === 0);
  const own = ours();
  const perSecond = (seconds: number) => `${Math.round(ROWS / seconds).toLocaleString("en-GB")} rows/s`;
  const row = { name: NAME, value: perSecond(own.seconds), target: "ours faster" };
  if (!program) return { ...row, floor: "LibreOffice not installed, not measured", ratio: "", met: null };
  const seconds = theirs(program, own.chances);
  return {
    ...{ ...row, floor: perSecond(seconds), ratio: (seconds / own.seconds).toPrecision(3) },
    met: own.seconds < seconds,
  };
}
