import type { Values } from "@/lib/intake/checkRow";
import { foldText } from "@/lib/intake/foldText";
import type { FieldValue } from "@/lib/intake/readCell";

/** What a person said a source means by a word. */
export interface LearnedWord {
  readonly kind: "line" | "machine" | "choice" | "text";
  /** Line code of a machine, field of a choice or a text; empty for a line. */
  readonly within: string;
  readonly written: string;
  /** Code of the line or machine, or the value of the field. */
  readonly meaning: string;
}

/** What a row says in the words of its source, put into those of the records. */
export interface Translated {
  readonly values: Readonly<Record<string, FieldValue>>;
  /** Fields concluded from the words of a text. */
  readonly inferred: readonly string[];
}

/** Fields a text can tell of, with the value that counts most first: a fault outweighs an exchange. */
const TOLD_BY_TEXT: Readonly<Record<string, readonly string[]>> = {
  kind: ["no_fault_found", "failure", "removal"],
  itemClass: [],
};

/** The words a source was learned to use, by kind and place. */
export class LearnedWords {
  readonly #meanings = new Map<string, string>();
  readonly #texts: readonly (LearnedWord & { readonly folded: string })[];

  constructor(words: readonly LearnedWord[]) {
    for (const { kind, within, written, meaning } of words)
      this.#meanings.set(markOf(kind, within, written), meaning);
    this.#texts = words
      .filter(({ kind }) => kind === "text")
      .map((word) => ({ ...word, folded: foldText(word.written) }));
  }

  /** The meaning of a word in its place; null when nobody taught it. */
  meaningOf(kind: LearnedWord["kind"], within: string, written: string): string | null {
    return this.#meanings.get(markOf(kind, within, written)) ?? null;
  }

  /** Names of lines and machines as the records have them, and what the text tells of fields left empty. */
  translate(values: Values): Translated {
    const names = this.#names(values);
    const told = this.#told({ ...values, ...names });
    return { values: { ...names, ...told }, inferred: Object.keys(told) };
  }

  #names({ lineCode, machineCode }: Values): Record<string, string> {
    const line = typeof lineCode === "string" ? this.meaningOf("line", "", lineCode) : null;
    const within = line ?? (typeof lineCode === "string" ? lineCode : "");
    const machine = typeof machineCode === "string" ? this.meaningOf("machine", within, machineCode) : null;
    return {
      ...(line === null ? {} : { lineCode: line }),
      ...(machine === null ? {} : { machineCode: machine }),
    };
  }

  #told(values: Values): Record<string, string> {
    const text = ` ${typeof values.text === "string" ? foldText(values.text) : ""} `;
    const told: Record<string, string> = {};
    for (const [field, order] of Object.entries(TOLD_BY_TEXT)) {
      if (!(field in values) || values[field] !== null) continue;
      const meant = this.#texts
        .filter(({ within, folded }) => within === field && text.includes(` ${folded} `))
        .map(({ meaning }) => meaning)
        .sort((a, b) => order.indexOf(a) - order.indexOf(b));
      // Two classes in one text name no single item.
      if (meant[0] !== undefined && (order.length > 0 || new Set(meant).size === 1)) told[field] = meant[0];
    }
    return told;
  }
}

function markOf(kind: string, within: string, written: string): string {
  return `${kind}\n${within}\n${foldText(written)}`;
}
