import "server-only";
import type { Transaction } from "@/lib/data/change";
import { findBrokenNetworks } from "@/lib/data/intake/brokenNetworks";
import { findCrossedLimits } from "@/lib/data/intake/crossedLimits";
import { findLeadingTwice } from "@/lib/data/intake/leadingTwice";
import { findMovedUnits } from "@/lib/data/intake/movedUnits";
import { mark, type Resolved, resolve, type Unsettled } from "@/lib/data/intake/resolve";
import { findLoopsOfSuccessors } from "@/lib/data/intake/successorLoops";
import { atSiteClocks, loadSurroundings } from "@/lib/data/intake/surroundings";
import { collectorFor } from "@/lib/data/intake/unmatched";
import type { Problem } from "@/lib/intake/checkRow";
import type { Dialect } from "@/lib/intake/dialect";
import { SeenMarks } from "@/lib/intake/findRepeats";
import type { Entity, Intent } from "@/lib/intake/intents/intent";
import { type Contradiction, type Merged, mergeIntents } from "@/lib/intake/intents/mergeIntents";
import { registerIntents, type Surroundings } from "@/lib/intake/intents/registerIntents";
import type { LearnedWords } from "@/lib/intake/learnedWords";
import { type ReadPlan, type ReadRow, readRegister } from "@/lib/intake/readRegister";
import type { KeyedRegister } from "@/lib/intake/registers";
import { textValue } from "@/lib/intake/rowValues";
import type { Body } from "@/lib/intake/splitBody";
import type { Mapping } from "@/lib/intake/suggestMapping";
import type { UnmatchedCollector } from "@/lib/intake/unmatched";
import type { IsoDate } from "@/lib/kernel/isoDate";

/** Some rows of a file, or all of them, with the choices made for it, and who may bring in what. */
export interface Examined {
  readonly register: KeyedRegister;
  readonly body: Body;
  readonly mapping: Mapping;
  readonly dialect: Dialect;
  /** What the file's source was learned to mean by its words. */
  readonly words?: LearnedWords;
  readonly recordedOn: IsoDate;
  /** Codes of the sites the person may import for; null is every site, new ones too. */
  readonly allowedSites: ReadonlySet<string> | null;
  /** Rows a person chose to leave out. */
  readonly leftOut: ReadonlySet<number>;
}

export interface Examination {
  readonly rows: readonly ReadRow[];
  readonly problems: readonly Problem[];
  readonly resolved: readonly Resolved[];
  /** Sites the rows speak of. */
  readonly siteCodes: readonly string[];
  /** Rows that read well and stand against what is stored: they can be taken in once that is cured. */
  readonly waiting: ReadonlySet<number>;
}

/** Entities no other thing of a file hangs on; a file may hold very many of them. */
const LEAVES: ReadonlySet<Entity> = new Set(["Event", "StockLot", "Sighting"]);

/** What the rows examined before said, for a file that is examined in pieces. */
export class FileMemory {
  readonly marks = new SeenMarks();
  /** Ids of things by kind and key, leaves apart. */
  readonly ids = new Map<string, string>();
  /** Row that spoke of a thing first. */
  readonly #firstRow = new Map<string, number>();
  #around: Surroundings | null = null;
  /** Names nothing on record is called; null before the first piece. */
  unmatched: UnmatchedCollector | null = null;

  async around(tx: Transaction, recordedOn: IsoDate): Promise<Surroundings> {
    this.#around ??= await loadSurroundings(tx, recordedOn);
    return this.#around;
  }

  /** The row of an earlier piece that spoke of the thing; null when none did. */
  firstRow({ entity, key }: Pick<Merged, "entity" | "key">): number | null {
    return this.#firstRow.get(mark(entity, key)) ?? null;
  }

  keep(things: readonly Merged[]): void {
    for (const { entity, key, rowNumber } of things) {
      const name = mark(entity, key);
      this.#firstRow.set(name, rowNumber);
      if (LEAVES.has(entity)) this.ids.delete(name);
    }
  }
}

/**
 * Reads rows of a file against what is stored: each row with its problems, and what the rows without an error
 * would add or change. Nothing is written.
 *
 * @param memory What the rows before these said, when the file is examined in pieces.
 */
export async function examine(
  tx: Transaction,
  wanted: Examined,
  memory = new FileMemory(),
): Promise<Examination> {
  const { register, body } = wanted;
  const reading = readRegister(body, planOf(wanted), memory.marks);
  const around = await memory.around(tx, wanted.recordedOn);
  memory.unmatched ??= await collectorFor(tx, register, around);
  const problems = new Problems(reading.rows);
  const siteCodes = new Set<string>();
  const intents: Intent[] = [];
  for (const row of reading.rows) {
    const site = siteOf(row, around);
    if (site !== null) siteCodes.add(site);
    if (row.state === "error" || wanted.leftOut.has(row.rowNumber)) continue;
    const said = registerIntents(register.key, row, around);
    problems.add(row.rowNumber, outsideScope(register, site, wanted.allowedSites));
    problems.addWaiting(row.rowNumber, said.problems);
    if (!problems.stopped(row.rowNumber)) intents.push(...said.intents);
  }
  const { merged, contradictions } = mergeIntents(intents);
  for (const one of contradictions) problems.add(one.rowNumber, [contradictory(one)]);
  const fresh = merged.filter((thing) => isFresh(thing, memory, problems));
  const settled = await resolve(tx, await atSiteClocks(tx, fresh), memory.ids);
  for (const one of settled.unsettled) problems.addWaiting(one.rowNumber, [one]);
  for (const one of await findAgainstStored(tx, settled.resolved)) problems.addWaiting(one.rowNumber, [one]);
  memory.keep(fresh);
  const resolved = withoutStopped(settled.resolved, problems);
  const rows = problems.rows();
  for (const row of rows) memory.unmatched.add(row);
  return {
    rows,
    problems: reading.problems,
    resolved,
    siteCodes: [...siteCodes].sort(),
    waiting: problems.waiting,
  };
}

function planOf({ register, mapping, dialect, words }: Examined): ReadPlan {
  return { register, mapping, dialect, ...(words ? { words } : {}) };
}

/** Whether no earlier piece of the file spoke of the thing; a leaf given twice stops the later row. */
function isFresh(thing: Merged, memory: FileMemory, problems: Problems): boolean {
  const first = memory.firstRow(thing);
  if (first === null) return true;
  if (LEAVES.has(thing.entity)) problems.add(thing.rowNumber, [givenAlready(first)]);
  return false;
}

/** What rows without a problem say, and what they need of a stopped row: a part it names first, say. */
function withoutStopped(resolved: readonly Resolved[], problems: Problems): Resolved[] {
  const kept = resolved.filter((one) => !problems.stopped(one.rowNumber));
  const needed = new Set(kept.flatMap(({ parents }) => Object.values(parents)));
  // Parents stand before their children, so going backwards finds the parents of parents.
  const stopped = resolved.filter((one) => problems.stopped(one.rowNumber) && one.kind === "add");
  const saved = new Set<Resolved>();
  for (const one of stopped.reverse()) {
    if (!needed.has(one.id)) continue;
    saved.add(one);
    for (const id of Object.values(one.parents)) needed.add(id);
  }
  return resolved.filter((one) => saved.has(one) || !problems.stopped(one.rowNumber));
}

/** What cannot stand beside what is stored. */
async function findAgainstStored(tx: Transaction, resolved: readonly Resolved[]): Promise<Unsettled[]> {
  return [
    ...(await findMovedUnits(tx, resolved)),
    ...(await findBrokenNetworks(tx, resolved)),
    ...(await findLoopsOfSuccessors(tx, resolved)),
    ...(await findCrossedLimits(tx, resolved)),
    ...(await findLeadingTwice(tx, resolved)),
  ];
}

type Found = Pick<Problem, "field" | "problem" | "remedy">;

/** Rows with what was found against them beside what is stored; each such finding keeps the row out. */
class Problems {
  readonly #rows: Map<number, ReadRow>;
  readonly waiting = new Set<number>();

  constructor(rows: readonly ReadRow[]) {
    this.#rows = new Map(rows.map((row) => [row.rowNumber, row]));
  }

  add(rowNumber: number, found: readonly Found[]): void {
    const row = this.#rows.get(rowNumber);
    if (!row) return;
    const fresh = found.filter((one) => !row.problems.some((known) => known.problem === one.problem));
    if (fresh.length === 0) return;
    const problems = fresh.map((one) => ({ column: null, found: "", severity: "error" as const, ...one }));
    this.#rows.set(rowNumber, { ...row, problems: [...row.problems, ...problems], state: "error" });
  }

  /** Something that can be cured without another file. */
  addWaiting(rowNumber: number, found: readonly Found[]): void {
    if (found.length > 0 && !this.stopped(rowNumber)) this.waiting.add(rowNumber);
    this.add(rowNumber, found);
  }

  stopped(rowNumber: number): boolean {
    return this.#rows.get(rowNumber)?.state === "error";
  }

  rows(): ReadRow[] {
    return [...this.#rows.values()];
  }
}

function siteOf(row: ReadRow, { siteOfLine }: Surroundings): string | null {
  return textValue(row.values, "siteCode") ?? siteOfLine(textValue(row.values, "lineCode") ?? "");
}

function outsideScope(
  register: KeyedRegister,
  site: string | null,
  allowed: ReadonlySet<string> | null,
): Found[] {
  if (allowed === null) return [];
  if (register.key === "lifecycle")
    return [
      {
        field: null,
        problem: "Supply dates hold for every site, and your role covers some sites only",
        remedy: "Ask somebody with a role for all sites to load them",
      },
    ];
  if (site !== null && allowed.has(site)) return [];
  // The same words whether the site is another's or does not exist: an import must not tell which.
  return [
    {
      field: "siteCode",
      problem: `You may not load rows for ${site ?? "this line"}`,
      remedy: "Leave the row out, or ask a planner of that site",
    },
  ];
}

function givenAlready(first: number): Found {
  return {
    field: null,
    problem: `Row ${first} already gives this entry`,
    remedy: "Keep one of the two rows, or tell them apart in the file",
  };
}

function contradictory({ firstRow, field, first, second }: Contradiction): Found {
  return {
    field,
    problem: `Row ${firstRow} gives ${field} as “${first}”, this row as “${second}”`,
    remedy: "Make the two rows agree; one thing has one value",
  };
}
