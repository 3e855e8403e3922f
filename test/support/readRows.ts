import { findHeader } from "@/lib/intake/findHeader";
import type { LearnedWords } from "@/lib/intake/learnedWords";
import type { RawCell } from "@/lib/intake/reading";
import { readRegister } from "@/lib/intake/readRegister";
import { REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import { splitBody } from "@/lib/intake/splitBody";
import { suggestMapping, toMapping } from "@/lib/intake/suggestMapping";

/** A file with decimal commas and the day first. */
export const COMMA = { decimalMark: "comma", dateOrder: "dayFirst", columns: {} } as const;

/** The rows of a table as a register reads them. */
export function rowsOf(
  key: RegisterKey,
  table: RawCell[][],
  more: { words?: LearnedWords; dialect?: object } = {},
) {
  const register = REGISTERS[key];
  const body = splitBody(table, findHeader(table, register));
  const mapping = toMapping(suggestMapping(body.headers, register));
  const dialect = { ...COMMA, ...more.dialect };
  return readRegister(body, { register, mapping, dialect, ...(more.words ? { words: more.words } : {}) })
    .rows;
}
