import type { FieldKind } from "@/lib/intake/field";
import { BasisCounter, type BasisFinding, type BasisWord } from "@/lib/intake/quantityBasis";
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
  /** What quantities count, where a person said so. */
  quantityBasis?: BasisWord;
  /** The source's own words for nothing; those commonly used unless given. */
  nullWords?: readonly string[];
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
  quantityBasis: BasisFinding;
  columns: {
    header: string;
    decimalMark: Finding<DecimalMark> | null;
    dateOrder: Finding<DateOrder> | null;
  }[];
  /** What to read the file by, with a person's answers still missing where `ask` says so. */
  proposal: Dialect;
  ask: ("decimalMark" | "dateOrder" | "quantityBasis")[];
};

type Vote<T> = T | "either" | "none";

const NUMBER_KINDS: readonly FieldKind[] = ["integer", "decimal", "percent", "quantity"];
const DATE_KINDS: readonly FieldKind[] = ["date", "dateTime", "endTime"];

function voteOnMark(cell: RawCell): Vote<DecimalMark> {
  // Without either mark a number is the same by both.
  if (typeof cell !== "string" || !/[.,]/.test(cell)) return "none";
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

const EXAMPLES = 5;

/** Counts what the values of one column, or of several together, say about one custom. */
class Tally<T extends string> {
  readonly #custom: Custom<T>;
  #total = 0;
  #either = 0;
  readonly #votes: Record<T, number>;
  readonly #examples: string[] = [];

  constructor(custom: Custom<T>) {
    this.#custom = custom;
    const [one, other] = custom.sides;
    this.#votes = { [one]: 0, [other]: 0 } as Record<T, number>;
  }

  add(cell: RawCell): void {
    const text = plainText(cell);
    if (text === "") return;
    this.#total += 1;
    const vote = this.#custom.vote(cell);
    if (vote === "either") {
      this.#either += 1;
      if (this.#examples.length < EXAMPLES) this.#examples.push(text);
    } else if (vote !== "none") this.#votes[vote] += 1;
  }

  addAll(others: readonly Tally<T>[]): this {
    for (const other of others) {
      this.#total += other.#total;
      this.#either += other.#either;
      for (const side of this.#custom.sides) this.#votes[side] += other.#votes[side];
      this.#examples.push(...other.#examples.slice(0, EXAMPLES - this.#examples.length));
    }
    return this;
  }

  finding(): Finding<T> {
    const [one, other] = this.#custom.sides;
    const votes = { ...this.#votes };
    const of = (state: Finding<T>["state"], choice: T | null): Finding<T> => ({
      ...{ state, choice, votes, ambiguous: this.#either, total: this.#total },
      ambiguousShare: this.#total === 0 ? 0 : this.#either / this.#total,
      examples: [...this.#examples],
    });
    if (votes[one] > 0 && votes[other] > 0) return of("conflict", null);
    if (votes[one] > 0) return of("certain", one);
    if (votes[other] > 0) return of("certain", other);
    return this.#either > 0 ? of("ambiguous", null) : of("plain", null);
  }
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

interface Counted {
  readonly header: string;
  readonly mark: Tally<DecimalMark> | null;
  readonly order: Tally<DateOrder> | null;
  /** Its place among the columns of quantities; null is none. */
  readonly quantity: number | null;
}

/** Counts what the values of a file say about its numbers and dates, row by row, so that none need be kept. */
export class DialectCounter {
  readonly #columns: readonly Counted[];
  readonly #basis: BasisCounter;

  constructor(columns: readonly Pick<SampleColumn, "header" | "kind">[]) {
    const quantities = columns.filter(({ kind }) => kind === "quantity").map(({ header }) => header);
    this.#basis = new BasisCounter(quantities);
    this.#columns = columns.map(({ header, kind }) => ({
      header,
      quantity: kind === "quantity" ? quantities.indexOf(header) : null,
      mark: NUMBER_KINDS.includes(kind) ? new Tally(MARK) : null,
      order: DATE_KINDS.includes(kind) ? new Tally(ORDER) : null,
    }));
  }

  /** @param place Which of the columns, from 0. */
  add(place: number, cell: RawCell): void {
    const column = this.#columns[place];
    column?.mark?.add(cell);
    column?.order?.add(cell);
    if (column && column.quantity !== null) this.#basis.add(column.quantity, cell);
  }

  finding(): DialectFinding {
    const decimalMark = new Tally(MARK).addAll(this.#columns.flatMap(({ mark }) => mark ?? [])).finding();
    const dateOrder = new Tally(ORDER).addAll(this.#columns.flatMap(({ order }) => order ?? [])).finding();
    const columns = this.#columns.map(({ header, mark, order }) => ({
      ...{ header, decimalMark: mark?.finding() ?? null, dateOrder: order?.finding() ?? null },
    }));
    const file = {
      decimalMark: decimalMark.choice ?? "point",
      dateOrder: dateOrder.choice ?? "dayFirst",
    } as const;
    const asked = {
      decimalMark: mustAsk(
        decimalMark,
        columns.map((column) => column.decimalMark),
      ),
      dateOrder: mustAsk(
        dateOrder,
        columns.map((column) => column.dateOrder),
      ),
    };
    const quantityBasis = this.#basis.finding();
    return {
      ...{ decimalMark, dateOrder, quantityBasis, columns },
      proposal: { ...file, columns: keepDifferent(columnDialects(columns), file) },
      ask: [
        ...(["decimalMark", "dateOrder"] as const).filter((custom) => asked[custom]),
        ...(quantityBasis.state === "ambiguous" ? (["quantityBasis"] as const) : []),
      ],
    };
  }
}

/**
 * Finds how a file writes numbers and dates from the values of its mapped columns. What the values leave
 * open is asked, never guessed; the proposal then holds decimal point and day first until answered.
 */
export function detectDialect(samples: readonly SampleColumn[]): DialectFinding {
  const counter = new DialectCounter(samples);
  samples.forEach(({ cells }, place) => {
    for (const cell of cells) counter.add(place, cell);
  });
  return counter.finding();
}
