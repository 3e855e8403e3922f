import "server-only";
import { database } from "@/lib/data/client";
import { copyLinesInTransaction, plainPool, queryInTransaction } from "@/lib/data/intake/bulk";
import { linesOf } from "@/lib/data/intake/copyRows";
import type { Resolved } from "@/lib/data/intake/resolve";
import { keptSteps, STEP_COLUMNS } from "@/lib/data/intake/write";
import { byFields } from "@/lib/data/intake/writers";
import type { RegisterKey } from "@/lib/intake/registers";

/** What a reading made ready to be written. */
export interface Prepared {
  /** Rows it would add. */
  readonly rows: number;
  readonly unchanged: number;
  /** The data version it was compared with. */
  readonly version: string;
}

/**
 * Makes events ready for the load while they are read: a log of a million is long to read and quick to write, and as
 * long as nothing has changed since, what was read need not be read again.
 */
export class Preparing {
  readonly #batchId: string;
  #isWorth: boolean;
  #version = "";
  #place = 0;
  #rows = 0;
  #unchanged = 0;

  constructor(batchId: string, register: RegisterKey) {
    this.#batchId = batchId;
    this.#isWorth = register === "events";
  }

  async begin(): Promise<void> {
    await database().importPrepared.deleteMany({ where: { batchId: this.#batchId } });
    this.#version = await versionNow();
  }

  async take(resolved: readonly Resolved[]): Promise<void> {
    // A change, or a part the file is the first to name, is written in an order that lines of one table do not have.
    this.#isWorth &&= resolved.every(
      ({ kind, entity }) => kind === "same" || (kind === "add" && entity === "Event"),
    );
    if (!this.#isWorth) return;
    const added = resolved.filter(({ kind }) => kind === "add");
    this.#unchanged += resolved.length - added.length;
    const stepOf = new Map(added.map((one) => [one.after, one]));
    for (const rows of byFields(added.map(({ after }) => after))) {
      const fields = Object.keys(rows[0] ?? {});
      const own = rows.flatMap((row) => stepOf.get(row) ?? []);
      const steps = linesOf(keptSteps(own, { batchId: this.#batchId, from: this.#rows }), STEP_COLUMNS);
      await plainPool().query(
        `INSERT INTO "ImportPrepared" ("batchId", "place", "rows", "fields", "lines", "steps")
         VALUES ($1, $2, $3, $4, $5, $6)`,
        [this.#batchId, this.#place, rows.length, fields.join(), linesOf(rows, fields), steps],
      );
      this.#place += 1;
      this.#rows += rows.length;
    }
  }

  /** What is ready; null when the load must look at the file itself. */
  done(): Prepared | null {
    if (!this.#isWorth) return null;
    return { rows: this.#rows, unchanged: this.#unchanged, version: this.#version };
  }
}

async function versionNow(): Promise<string> {
  const { version } = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
  return String(version);
}

/** Whether what was made ready is all there, and the records are those it was compared with; they are held by now. */
export async function isStillReady(batchId: string, { rows, version }: Prepared): Promise<boolean> {
  if (version !== (await versionNow())) return false;
  const { _sum: there } = await database().importPrepared.aggregate({
    where: { batchId },
    _sum: { rows: true },
  });
  return (there.rows ?? 0) === rows;
}

interface Piece {
  readonly rows: number;
  readonly fields: string;
  readonly lines: string;
  readonly steps: string;
}

/** Writes what is ready into the transaction that is open on the bulk client, one piece fetched while another is written. */
export async function writePrepared(batchId: string, hear: (rows: number) => Promise<void>): Promise<void> {
  let written = 0;
  let fetching = pieceAt(batchId, 0);
  for (let place = 1; ; place += 1) {
    const piece = await fetching;
    if (piece === null) break;
    fetching = pieceAt(batchId, place);
    // Whoever stops meanwhile leaves it behind.
    fetching.catch(() => undefined);
    await copyLinesInTransaction({ table: "Event", columns: piece.fields.split(",") }, piece.lines);
    await copyLinesInTransaction({ table: "ImportChange", columns: STEP_COLUMNS }, piece.steps);
    written += piece.rows;
    await hear(written);
  }
  await queryInTransaction(`DELETE FROM "ImportPrepared" WHERE "batchId" = $1`, [batchId]);
}

async function pieceAt(batchId: string, place: number): Promise<Piece | null> {
  const { rows } = await plainPool().query<Piece>(
    `SELECT "rows", "fields", "lines", "steps" FROM "ImportPrepared" WHERE "batchId" = $1 AND "place" = $2`,
    [batchId, place],
  );
  return rows[0] ?? null;
}
