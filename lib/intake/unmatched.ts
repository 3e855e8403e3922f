import { hintsOf } from "@/lib/intake/eventWords";
import { foldText } from "@/lib/intake/foldText";
import type { Catalogue } from "@/lib/intake/intents/catalogue";
import { keyOf } from "@/lib/intake/intents/intent";
import { partKey } from "@/lib/intake/readPartNumber";
import type { ReadRow } from "@/lib/intake/readRegister";
import type { KeyedRegister } from "@/lib/intake/registers";
import { partValue, textValue } from "@/lib/intake/rowValues";

/** What rows of a file name and nothing on record is called. */
export interface UnmatchedName {
  readonly kind: "part" | "line" | "machine" | "choice" | "text";
  /** Maker of a part, line of a machine, field of a choice or a text. */
  readonly within: string;
  readonly written: string;
  readonly folded: string;
  readonly siteCode: string;
  readonly detail: string;
  readonly rows: number;
  readonly firstRow: number;
}

/** Names on record. */
export interface NamesOnRecord {
  readonly catalogue: Catalogue;
  readonly hasLine: (code: string) => boolean;
  /** By line code and machine code, joined by `keyOf`. */
  readonly hasMachine: (key: string) => boolean;
}

type Draft = Omit<UnmatchedName, "rows" | "firstRow" | "siteCode" | "folded"> & { readonly folded?: string };

/** Different names kept of one file; more are a sign of a wrong column. */
const MOST_NAMES = 2000;
const LONGEST = 200;

/** Collects, row by row, the names of a file that nothing on record is called. */
export class UnmatchedCollector {
  readonly #register: KeyedRegister;
  readonly #record: NamesOnRecord;
  readonly #found = new Map<string, { -readonly [K in keyof UnmatchedName]: UnmatchedName[K] }>();
  /** The assets register is where lines and machines get their names. */
  readonly #namesPlaces: boolean;

  constructor(register: KeyedRegister, record: NamesOnRecord) {
    this.#register = register;
    this.#record = record;
    this.#namesPlaces = register.key === "assets";
  }

  add(row: ReadRow): void {
    const drafts = [
      ...(row.state === "error" ? this.#parts(row) : []),
      ...(this.#namesPlaces ? [] : this.#places(row)),
      ...this.#choices(row),
      ...texts(row),
    ];
    const siteCode = textValue(row.values, "siteCode") ?? "";
    for (const draft of drafts) this.#note(draft, siteCode, row.rowNumber);
  }

  list(): UnmatchedName[] {
    return [...this.#found.values()];
  }

  #note(draft: Draft, siteCode: string, rowNumber: number): void {
    const written = draft.written.slice(0, LONGEST);
    const folded = (draft.folded ?? foldText(written)).slice(0, LONGEST);
    const within = draft.within.slice(0, LONGEST);
    const mark = [draft.kind, within, folded, siteCode].join("\n");
    const known = this.#found.get(mark);
    if (known) known.rows += 1;
    else if (this.#found.size < MOST_NAMES && folded !== "") {
      const detail = draft.detail.slice(0, LONGEST);
      this.#found.set(mark, {
        ...draft,
        within,
        written,
        folded,
        detail,
        siteCode,
        rows: 1,
        firstRow: rowNumber,
      });
    }
  }

  #parts({ values }: ReadRow): Draft[] {
    const detail = textValue(values, "description") ?? textValue(values, "text") ?? "";
    const named = this.#register.fields.flatMap(({ key, kind }) => {
      const part = kind === "partNumber" ? partValue(values, key) : null;
      const maker = textValue(values, makerField(key)) ?? "";
      if (part === null || this.#record.catalogue.find(part, maker || null).kind === "known") return [];
      return [{ kind: "part" as const, within: maker, written: part.base, folded: part.key, detail }];
    });
    return [...named, ...this.#storeroom(values, detail)];
  }

  /** A storeroom's own number that stands without a maker's. */
  #storeroom(values: ReadRow["values"], detail: string): Draft[] {
    const number = textValue(values, "storeroomNumber");
    const site = textValue(values, "siteCode") ?? "";
    if (number === null || partValue(values, "partNumber") !== null) return [];
    if (this.#record.catalogue.findStoreroom(site, number)) return [];
    return [{ kind: "part", within: "", written: number, folded: partKey(number), detail }];
  }

  #places({ values }: ReadRow): Draft[] {
    const line = textValue(values, "lineCode");
    const machine = textValue(values, "machineCode");
    if (line === null) return [];
    if (!this.#record.hasLine(line)) return [{ kind: "line", within: "", written: line, detail: "" }];
    if (machine === null || this.#record.hasMachine(keyOf(line, machine))) return [];
    return [{ kind: "machine", within: line, written: machine, detail: "" }];
  }

  #choices({ problems }: ReadRow): Draft[] {
    return problems.flatMap(({ field, found, severity }) => {
      const isChoice = this.#register.fields.some(({ key, kind }) => key === field && kind === "choice");
      if (!isChoice || severity !== "error" || found === "") return [];
      return [{ kind: "choice" as const, within: field ?? "", written: found, detail: "" }];
    });
  }
}

/** Words of a work order's text that tell what the row leaves empty; the detail says what they probably mean. */
function texts({ values }: ReadRow): Draft[] {
  const text = textValue(values, "text");
  // Its words are only asked where the columns say nothing; most rows of a long log say both.
  const isTold = values.kind !== null && values.itemClass !== null;
  if (text === null || !("kind" in values) || isTold) return [];
  return hintsOf(text)
    .filter(({ field }) => values[field] === null)
    .map(({ field, word, meaning, language }) => ({
      ...{ kind: "text" as const, within: field, written: word },
      detail: `${meaning}\n${language}`,
    }));
}

function makerField(partField: string): string {
  return partField.endsWith("Part") ? partField.replace(/Part$/, "Maker") : "maker";
}
