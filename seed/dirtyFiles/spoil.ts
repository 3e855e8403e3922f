import type { FieldKind } from "@/lib/intake/field";
import { findField, REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import type { KeyCell, Meant, ProblemNumber } from "@/seed/dirtyFiles/answerKey";
import type { Habits } from "@/seed/registerFiles/habits";
import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import { writtenCell } from "@/seed/registerFiles/writeRegister";

/** A cell as written; in a workbook also a formula with what it shows, an error, or a number shown with zeros. */
export type DirtyCell =
  | string
  | number
  | { readonly formula: string; readonly shows: string | number | null }
  | { readonly error: string }
  | { readonly digits: number };

/** One cell written otherwise than the truth would have it. */
export interface Spoil {
  /** Place of the row among the entries, from 0. */
  readonly row: number;
  readonly field: string;
  readonly problem: ProblemNumber;
  readonly write: (truth: string) => DirtyCell;
  /** What the cell means all the same; without it the truth. */
  readonly means?: Meant | ((truth: string) => Meant);
  /** The row cannot be taken as it stands. */
  readonly refuses?: true;
}

export interface DirtyRow {
  readonly cells: Readonly<Record<string, DirtyCell>>;
  readonly means: readonly KeyCell[];
  readonly isRefused: boolean;
}

interface Register {
  readonly register: RegisterKey;
  readonly habits: Habits;
}

function kindOf(register: RegisterKey, field: string): FieldKind {
  const found = findField(REGISTERS[register], field);
  if (!found) throw new RangeError(`field must be one of ${register}, got ${field}`);
  return found.kind;
}

function plainMeaning(value: RegisterRow[string], kind: FieldKind): Meant {
  return kind === "firmware" && value !== null ? String(value) : value;
}

function meaningOf(spoil: Spoil, truth: RegisterRow[string], kind: FieldKind): Meant {
  if (spoil.means === undefined) return plainMeaning(truth, kind);
  return typeof spoil.means === "function" ? spoil.means(String(truth ?? "")) : spoil.means;
}

/** Whether the cell is written without the truth, which a site may not know. */
function standsAlone({ means, refuses }: Spoil): boolean {
  return refuses === true || (means !== undefined && typeof means !== "function");
}

/** The rows of a register with some cells written as people write them, and what each still means. */
export function spoilRows(
  rows: readonly RegisterRow[],
  spoils: readonly Spoil[],
  { register, habits }: Register,
): DirtyRow[] {
  return rows.map((row, index) => {
    const own = new Map(spoils.filter((spoil) => spoil.row === index).map((spoil) => [spoil.field, spoil]));
    const cells: Record<string, DirtyCell> = {};
    const means = Object.entries(row).map(([field, truth]): KeyCell => {
      const kind = kindOf(register, field);
      const found = own.get(field);
      const spoil = found && (truth !== null || standsAlone(found)) ? found : undefined;
      cells[field] = spoil ? spoil.write(String(truth ?? "")) : writtenCell(truth, kind, habits);
      if (!spoil) return { field, means: plainMeaning(truth, kind), problem: null };
      return { field, means: meaningOf(spoil, truth, kind), problem: spoil.problem };
    });
    return { cells, means, isRefused: [...own.values()].some(({ refuses }) => refuses === true) };
  });
}
