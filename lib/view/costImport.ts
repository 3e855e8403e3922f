import type { CostFile, CostRow, ReadCost } from "@/lib/intake/costs/readCosts";
import { compareAmounts } from "@/lib/kernel/money";
import { exactMoney } from "@/lib/view/format";
import type { ProjectCost, ProjectFile } from "@/lib/view/project";
import { day } from "@/lib/view/time";

/** What becomes of a row: added, known already, or left out. */
export interface CostImportRow {
  readonly rowNumber: number;
  readonly state: "new" | "same" | "error";
  readonly cost: ReadCost | null;
  /** What a person should know of the row: what was found, and what to do. */
  readonly words: readonly string[];
}

export interface CostPreview {
  readonly columns: CostFile["columns"];
  readonly problems: readonly string[];
  readonly questions: CostFile["questions"];
  readonly rows: readonly CostImportRow[];
  readonly skipped: number;
}

/** Holds the rows of a file against the ledger: a number booked with other money is an error, never overwritten. */
export function judgeCosts(file: CostFile, { costs, currency }: Ledger): CostPreview {
  const known = new Map(costs.map((cost) => [keyOf(cost), cost]));
  const moneyOf = ({ own, amount }: ProjectCost) => own ?? { amount, currency };
  return {
    ...file,
    rows: file.rows.map((row) => {
      const stored = row.cost && known.get(keyOf(row.cost));
      return judgeRow(row, stored ? { ...moneyOf(stored), spentOn: stored.spentOn } : null);
    }),
  };
}

type Ledger = Pick<ProjectFile, "costs" | "currency">;

/** What is booked under the number of a row, in its own currency. */
type Booked = Pick<ReadCost, "amount" | "currency" | "spentOn">;

const keyOf = ({ kind, reference }: Pick<ReadCost, "kind" | "reference">) => `${kind} ${reference}`;

function judgeRow({ rowNumber, problems, cost }: CostRow, booked: Booked | null): CostImportRow {
  const words = problems.map(
    ({ column, found, problem, remedy }) =>
      `${column === null ? "" : `${column}: `}${problem}${found === "" ? "" : ` (found ${found})`}. ${remedy}.`,
  );
  if (cost === null) return { rowNumber, state: "error", cost, words };
  if (booked === null) return { rowNumber, state: "new", cost, words };
  if (isSame(cost, booked)) return { rowNumber, state: "same", cost, words: ["In the ledger already."] };
  const { amount, currency, spentOn } = booked;
  return {
    ...{ rowNumber, state: "error", cost },
    words: [
      `${cost.reference} is booked already, with ${exactMoney(amount, currency)} on ${day(spentOn)}. Take that entry back first, or correct the row.`,
    ],
  };
}

const isSame = (cost: ReadCost, { amount, currency, spentOn }: Booked) =>
  currency === cost.currency && compareAmounts(cost.amount, amount) === 0 && cost.spentOn === spentOn;

/** What becomes of the rows, in numbers. */
export function countRows({ rows }: Pick<CostPreview, "rows">) {
  const of = (state: CostImportRow["state"]) => rows.filter((row) => row.state === state).length;
  return { added: of("new"), same: of("same"), refused: of("error") };
}
