import { dialectOf, openRegister } from "@/lib/intake/openRegister";
import type { FieldValue } from "@/lib/intake/readCell";
import { partKey, suggestLookAlikes } from "@/lib/intake/readPartNumber";
import { type ReadRow, readRegister } from "@/lib/intake/readRegister";
import { REGISTERS } from "@/lib/intake/registers";
import { openQuestions, settleDialect } from "@/lib/intake/settleDialect";
import { toMapping } from "@/lib/intake/suggestMapping";
import type { DirtyFile, KeyCell, KeyRow, Meant, ProblemNumber } from "@/seed/dirtyFiles/answerKey";

/** Counts against the key; precision is right of given, recall right of findable. */
export interface Score {
  /** Values the key has that a reader can find. */
  findable: number;
  /** Values the importer gave where the key says anything, also nothing. */
  given: number;
  right: number;
}

export interface Findings {
  readonly score: Score;
  /** Rows that must stay out or are no entries: how many there are, and how many did. */
  readonly kept: { must: number; did: number };
  /** Cells and rows of each problem, and how many of them were taken as they mean. */
  readonly byProblem: Map<ProblemNumber, { shown: number; right: number }>;
  readonly misses: string[];
}

export const emptyFindings = (): Findings => ({
  score: { findable: 0, given: 0, right: 0 },
  kept: { must: 0, did: 0 },
  byProblem: new Map(),
  misses: [],
});

function said(value: FieldValue | undefined): string | number | boolean | null {
  if (value === undefined || value === null || typeof value !== "object") return value ?? null;
  if ("level" in value)
    return `${value.bound === "atLeast" ? ">=" : ""}${value.level}${value.minor === null ? "" : `.${value.minor}`}`;
  return partOf(value.base, value.revision);
}

const partOf = (base: string, revision: string | null) =>
  revision === null ? partKey(base) : `${partKey(base)} rev. ${revision}`;

/** The same for what the key means. */
function meant(field: string, means: Exclude<Meant, object>): string | number | boolean | null {
  if (!/(?:partNumber|Part|successor)$/.test(field) || typeof means !== "string") return means;
  const [base = "", revision = null] = means.split(" rev. ");
  return partOf(base, revision);
}

function isSame(one: string | number | boolean | null, other: string | number | boolean | null): boolean {
  if (typeof one === "number" && typeof other === "number") return Math.abs(one - other) < 1e-6;
  return one === other || (one !== null && other !== null && String(one) === String(other));
}

interface Judged {
  readonly isRight: boolean;
  readonly isGiven: boolean;
  readonly isFindable: boolean;
}

function judge({ field, means }: KeyCell, row: ReadRow | undefined, catalogue: readonly string[]): Judged {
  // A row kept out gives none of its values.
  const value = row === undefined || row.state === "error" ? null : (row.values[field] ?? null);
  if (means !== null && typeof means === "object") {
    const own = value !== null && typeof value === "object" && "key" in value ? value.key : "";
    const key = partKey(means.looksLike);
    const isRight = own !== key && suggestLookAlikes(own, catalogue).includes(key);
    return { isRight, isGiven: false, isFindable: false };
  }
  const isGiven = value !== null;
  return { isRight: isSame(said(value), meant(field, means)), isGiven, isFindable: means !== null };
}

class Scorer {
  readonly #findings: Findings;
  readonly #catalogue: readonly string[];
  readonly #file: string;

  constructor(findings: Findings, file: string, catalogue: readonly string[]) {
    this.#findings = findings;
    this.#file = file;
    this.#catalogue = catalogue;
  }

  note(problem: ProblemNumber | null, isRight: boolean, what: string): void {
    if (!isRight) this.#findings.misses.push(`${this.#file} ${what}`);
    if (problem === null) return;
    const known = this.#findings.byProblem.get(problem) ?? { shown: 0, right: 0 };
    this.#findings.byProblem.set(problem, { shown: known.shown + 1, right: known.right + (isRight ? 1 : 0) });
  }

  /** A row that must stay out, whole. */
  keptOut(key: KeyRow, row: ReadRow | undefined): void {
    const isOut = key.outcome === "none" ? row === undefined : row?.state === "error";
    this.#findings.kept.must += 1;
    if (isOut) this.#findings.kept.did += 1;
    this.note(key.problem, isOut, `row ${key.rowNumber}: must stay out (${key.outcome})`);
    const [spoilt] = key.cells.filter(({ problem }) => problem !== null);
    if (spoilt) this.note(spoilt.problem, isOut, `row ${key.rowNumber}: ${spoilt.field} must stop it`);
  }

  cell(key: KeyCell, row: ReadRow | undefined, rowNumber: number): void {
    const { isRight, isGiven, isFindable } = judge(key, row, this.#catalogue);
    const { score } = this.#findings;
    if (isFindable) score.findable += 1;
    if (isGiven) score.given += 1;
    if (isRight && isGiven) score.right += 1;
    const got = row === undefined ? "no row" : `${said(row.values[key.field])} (${row.state})`;
    const wanted = JSON.stringify(key.means);
    this.note(key.problem, isRight, `row ${rowNumber} ${key.field}: means ${wanted}, read ${got}`);
  }
}

/** Opens a dirty file with the proposed columns, and answers as its site would what the importer asks. */
export async function openDirty(file: DirtyFile) {
  const register = REGISTERS[file.register];
  const opened = await openRegister(file.bytes, register);
  if (!opened.ok) throw new Error(`${file.name}: ${opened.error}`);
  const { body, suggestions } = opened.value;
  const mapping = toMapping(suggestions);
  const finding = dialectOf(body, mapping, register);
  const asked = new Set<string>(openQuestions(finding, finding.proposal));
  const known = { ...file.answers, quantityBasis: "total" as const };
  const answers = Object.fromEntries(Object.entries(known).filter(([custom]) => asked.has(custom)));
  return { register, body, mapping, answers, dialect: settleDialect(finding, answers) };
}

/**
 * Reads a dirty file as the import does, with the proposed columns and a person's answers where it asks, and counts
 * what was read against the key.
 */
export async function scoreFile(
  file: DirtyFile,
  catalogue: readonly string[],
  findings: Findings,
): Promise<void> {
  const { register, body, mapping, dialect } = await openDirty(file);
  const rows = new Map(
    readRegister(body, { register, mapping, dialect }).rows.map((row) => [row.rowNumber, row]),
  );
  const scorer = new Scorer(findings, file.name, catalogue);
  for (const key of file.rows) {
    const row = rows.get(key.rowNumber);
    if (key.outcome !== "entry") scorer.keptOut(key, row);
    else for (const cell of key.cells) scorer.cell(cell, row, key.rowNumber);
  }
}
