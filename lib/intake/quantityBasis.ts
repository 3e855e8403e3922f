import { plainText, type RawCell } from "@/lib/intake/reading";
import { isInSets, type QuantityBasis } from "@/lib/intake/readQuantity";

/** What a person says a column of quantities counts: "total", "perMachine", "sets:2". */
export type BasisWord = "total" | "perMachine" | `sets:${number}`;

/** What a column of quantities says of its own basis. */
export interface BasisFinding {
  /** `plain`: pieces. `ambiguous`: its name or cells speak of machines or sets, and a person must say. */
  readonly state: "plain" | "ambiguous";
  readonly columns: readonly string[];
  readonly examples: readonly string[];
  readonly ambiguous: number;
  readonly total: number;
}

const PER_MACHINE =
  /(?:\b(?:per|pro|je|na|par|por|pr)\s+|\/\s*)(?:machine|maschine|anlage|maszyn\p{L}*|máquina|maquina|macchina|maskin)/iu;
const IN_SETS =
  /(?<!\p{L})(?:sets?|satz|sätze|komplet\p{L}*|juegos?|jeux?|sats(?:er)?|pairs?|paare?|pary)(?!\p{L})/iu;
const EXAMPLES = 5;

/** Counts, cell by cell, whether quantities are pieces, or their header or cells leave it open what they count. */
export class BasisCounter {
  readonly #named: readonly { readonly header: string; readonly asks: boolean }[];
  readonly #doubtful = new Set<string>();
  readonly #examples = new Set<string>();
  #ambiguous = 0;
  #total = 0;

  constructor(headers: readonly string[]) {
    this.#named = headers.map((header) => ({
      header,
      asks: PER_MACHINE.test(header) || IN_SETS.test(header),
    }));
  }

  /** @param place Which of the columns, from 0. */
  add(place: number, cell: RawCell): void {
    const text = plainText(cell);
    const column = this.#named[place];
    if (text === "" || column === undefined) return;
    this.#total += 1;
    if (!column.asks && !isInSets(text)) return;
    this.#ambiguous += 1;
    this.#doubtful.add(column.header);
    if (this.#examples.size < EXAMPLES) this.#examples.add(text);
  }

  finding(): BasisFinding {
    return {
      state: this.#ambiguous > 0 ? "ambiguous" : "plain",
      columns: [...this.#doubtful],
      examples: [...this.#examples],
      ambiguous: this.#ambiguous,
      total: this.#total,
    };
  }
}

/** The basis a word stands for in a column of this name; pieces when there is none. */
export function basisOf(word: string | undefined, header: string): QuantityBasis {
  const size = /^sets:([1-9]\d?)$/.exec(word ?? "")?.[1];
  if (size !== undefined) return { kind: "sets", size: Number(size), bareToo: IN_SETS.test(header) };
  return { kind: word === "perMachine" ? "perMachine" : "total" };
}
