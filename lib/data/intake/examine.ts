import "server-only";
import type { Transaction } from "@/lib/data/change";
import { findBrokenNetworks } from "@/lib/data/intake/brokenNetworks";
import { findCrossedLimits } from "@/lib/data/intake/crossedLimits";
import { findLeadingTwice } from "@/lib/data/intake/leadingTwice";
import { findMovedUnits } from "@/lib/data/intake/movedUnits";
import { type Resolved, resolve, type Unsettled } from "@/lib/data/intake/resolve";
import { findLoopsOfSuccessors } from "@/lib/data/intake/successorLoops";
import { atSiteClocks, loadSurroundings } from "@/lib/data/intake/surroundings";
import type { Problem } from "@/lib/intake/checkRow";
import type { Dialect } from "@/lib/intake/dialect";
import type { Intent } from "@/lib/intake/intents/intent";
import { type Contradiction, mergeIntents } from "@/lib/intake/intents/mergeIntents";
import { registerIntents, type Surroundings } from "@/lib/intake/intents/registerIntents";
import { type ReadRow, readRegister } from "@/lib/intake/readRegister";
import type { KeyedRegister } from "@/lib/intake/registers";
import { textValue } from "@/lib/intake/rowValues";
import type { Body } from "@/lib/intake/splitBody";
import type { Mapping } from "@/lib/intake/suggestMapping";
import type { IsoDate } from "@/lib/kernel/isoDate";

/** A file with the choices made for it, and who may bring in what. */
export interface Examined {
  readonly register: KeyedRegister;
  readonly body: Body;
  readonly mapping: Mapping;
  readonly dialect: Dialect;
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
}

/**
 * Reads a file against what is stored: each row with its problems, and what the rows without an error
 * would add or change. Nothing is written.
 */
export async function examine(tx: Transaction, wanted: Examined): Promise<Examination> {
  const { register, body, mapping, dialect } = wanted;
  const reading = readRegister(body, { register, mapping, dialect });
  const around = await loadSurroundings(tx, wanted.recordedOn);
  const problems = new Problems(reading.rows);
  const siteCodes = new Set<string>();
  const intents: Intent[] = [];
  for (const row of reading.rows) {
    const site = siteOf(row, around);
    if (site !== null) siteCodes.add(site);
    if (row.state === "error" || wanted.leftOut.has(row.rowNumber)) continue;
    const said = registerIntents(register.key, row, around);
    problems.add(row.rowNumber, [...outsideScope(register, site, wanted.allowedSites), ...said.problems]);
    if (!problems.stopped(row.rowNumber)) intents.push(...said.intents);
  }
  const { merged, contradictions } = mergeIntents(intents);
  for (const one of contradictions) problems.add(one.rowNumber, [contradictory(one)]);
  const settled = await resolve(tx, await atSiteClocks(tx, merged));
  for (const one of settled.unsettled) problems.add(one.rowNumber, [one]);
  for (const one of await findAgainstStored(tx, settled.resolved)) problems.add(one.rowNumber, [one]);
  const resolved = settled.resolved.filter((one) => !problems.stopped(one.rowNumber));
  return { rows: problems.rows(), problems: reading.problems, resolved, siteCodes: [...siteCodes].sort() };
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

function contradictory({ firstRow, field, first, second }: Contradiction): Found {
  return {
    field,
    problem: `Row ${firstRow} gives ${field} as “${first}”, this row as “${second}”`,
    remedy: "Make the two rows agree; one thing has one value",
  };
}
