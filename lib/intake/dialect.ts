import type { FieldKind } from "@/lib/intake/field";
import type { DateOrder } from "@/lib/intake/readDate";
import { type DecimalMark, readMarkedNumber } from "@/lib/intake/readDecimal";
import { plainText, type RawCell } from "@/lib/intake/reading";

/** How the numbers and dates of one column are written, where it differs from the rest of the file. */
export type ColumnDialect = { decimalMark?: DecimalMark; dateOrder?: DateOrder };

/** How the numbers and dates of a file are written; columns are named by their header. */
export type Dialect = {
  decimalMark: DecimalMark;
  dateOrder: DateOrder;
  columns: Readonly<Record<string, ColumnDialect>>;
};

/**
 * What the values say about one custom.
 * `plain`: no value depends on it. `certain`: all that tell agree. `ambiguous`: values depend on it and none
 * tells. `conflict`: some tell one thing, some the other.
 */
export type Finding<T extends string> = {
  state: "plain" | "certain" | "ambiguous" | "conflict";
  choice: T | null;
  votes: Readonly<Record<T, number>>;
  ambiguous: number;
  total: number;
  /** Share of the values that could be read either way, 0 to 1. */
  ambiguousShare: number;
  /** Up to five values that could be read either way. */
  examples: string[];
};

export type SampleColumn = { header: string; kind: FieldKind; cells: readonly RawCell[] };

export type DialectFinding = {
  decimalMark: Finding<DecimalMark>;
  dateOrder: Finding<DateOrder>;
  columns: {
    header: string;
    decimalMark: Finding<DecimalMark> | null;
    dateOrder: Finding<DateOrder> | null;
  }[];
  /** What to read the file by, with a person's answers still missing where `ask` says so. */
  proposal: Dialect;
  ask: ("decimalMark" | "dateOrder")[];
};

type Vote<T> = T | "either" | "none";

const NUMBER_KINDS: readonly FieldKind[] = ["integer", "decimal", "percent", "quantity"];
const DATE_KINDS: readonly FieldKind[] = ["date", "dateTime"];

function voteOnMark(cell: RawCell): Vote<DecimalMark> {
  if (typeof cell !== "string") return "none";
  const comma = readMarkedNumber(cell, "comma");
  const point = readMarkedNumber(cell, "point");
  if (comma.state === "value" && point.state === "value") {
    return comma.value.value === point.value.value ? "none" : "either";
  }
  if (comma.state === "value") return "comma";
  return point.state === "value" ? "point" : "none";
}

function voteOnOrder(cell: RawCell): Vote<DateOrder> {
  const match = /^(\d{1,2})[/-](\d{1,2})[/-](?:\d{4}|\d{2})(?:$|[ ,T])/.exec(plainText(cell));
  if (!match) return "none";
  const [first, second] = [Number(match[1]), Number(match[2])];
  if (first > 12 && second > 12) return "none";
  if (first > 12) return "dayFirst";
  if (second > 12) return "monthFirst";
  return first === second ? "none" : "either";
}

type Custom<T extends string> = { sides: readonly [T, T]; vote: (cell: RawCell) => Vote<T> };
const MARK: Custom<DecimalMark> = { sides: ["comma", "point"], vote: voteOnMark };
const ORDER: Custom<DateOrder> = { sides: ["dayFirst", "monthFirst"], vote: voteOnOrder };

function weigh<T extends string>(cells: readonly RawCell[], { sides, vote }: Custom<T>): Finding<T> {
  const filled = cells.filter((cell) => plainText(cell) !== "");
  const cast = filled.map((cell) => ({ cell, vote: vote(cell) }));
  const count = (side: Vote<T>) => cast.filter((one) => one.vote === side).length;
  const [one, other] = sides;
  const ambiguous = count("either");
  const votes = { [one]: count(one), [other]: count(other) } as Record<T, number>;
  const finding = (state: Finding<T>["state"], choice: T | null): Finding<T> => ({
    state,
    choice,
    votes,
    ambiguous,
    total: filled.length,
    ambiguousShare: filled.length === 0 ? 0 : ambiguous / filled.length,
    examples: cast
      .filter((each) => each.vote === "either")
      .slice(0, 5)
      .map((each) => plainText(each.cell)),
  });
  if (votes[one] > 0 && votes[other] > 0) return finding("conflict", null);
  if (votes[one] > 0) return finding("certain", one);
  if (votes[other] > 0) return finding("certain", other);
  return ambiguous > 0 ? finding("ambiguous", null) : finding("plain", null);
}

/** Whether a person must say it: the file does not tell, and some column does not tell for itself. */
function mustAsk<T extends string>(file: Finding<T>, columns: readonly (Finding<T> | null)[]): boolean {
  if (file.choice !== null || file.state === "plain") return false;
  return columns.some(
    (column) => column !== null && (column.state === "ambiguous" || column.state === "conflict"),
  );
}

function columnDialects(columns: DialectFinding["columns"]): Record<string, ColumnDialect> {
  const entries = columns.map(({ header, decimalMark, dateOrder }): [string, ColumnDialect] => [
    header,
    {
      ...(decimalMark?.choice ? { decimalMark: decimalMark.choice } : {}),
      ...(dateOrder?.choice ? { dateOrder: dateOrder.choice } : {}),
    },
  ]);
  return Object.fromEntries(entries);
}

/** Only what differs from the file is kept, so that a person's later choice for the file still counts. */
function keepDifferent(
  columns: Record<string, ColumnDialect>,
  file: Omit<Dialect, "columns">,
): Dialect["columns"] {
  const kept = Object.entries(columns).map(([header, own]): [string, ColumnDialect] => [
    header,
    {
      ...(own.decimalMark && own.decimalMark !== file.decimalMark ? { decimalMark: own.decimalMark } : {}),
      ...(own.dateOrder && own.dateOrder !== file.dateOrder ? { dateOrder: own.dateOrder } : {}),
    },
  ]);
  return Object.fromEntries(kept.filter(([, own]) => Object.keys(own).length > 0));
}

/**
 * Finds how a file writes numbers and dates from the values of its mapped columns. What the values leave
 * open is asked, never guessed; the proposal then holds decimal point and day first until answered.
 */
export function detectDialect(samples: readonly SampleColumn[]): DialectFinding {
  const numbers = samples.filter((column) => NUMBER_KINDS.includes(column.kind));
  const dates = samples.filter((column) => DATE_KINDS.includes(column.kind));
  const decimalMark = weigh(
    numbers.flatMap((column) => column.cells),
    MARK,
  );
  const dateOrder = weigh(
    dates.flatMap((column) => column.cells),
    ORDER,
  );
  const columns = samples.map((column) => ({
    header: column.header,
    decimalMark: numbers.includes(column) ? weigh(column.cells, MARK) : null,
    dateOrder: dates.includes(column) ? weigh(column.cells, ORDER) : null,
  }));
  const file = {
    decimalMark: decimalMark.choice ?? "point",
    dateOrder: dateOrder.choice ?? "dayFirst",
  } as const;
  const ask: DialectFinding["ask"] = [];
  if (
    mustAsk(
      decimalMark,
      columns.map((column) => column.decimalMark),
    )
  )
    ask.push("decimalMark");
  if (
    mustAsk(
      dateOrder,
      columns.map((column) => column.dateOrder),
    )
  )
    ask.push("dateOrder");
  return {
    decimalMark,
    dateOrder,
    columns,
    proposal: { ...file, columns: keepDifferent(columnDialects(columns), file) },
    ask,
  };
}
