import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { UnreadableFile } from "@/lib/intake/limits";
import { RowSplitter } from "@/lib/intake/rowSplitter";

/** The rows of a text that comes in pieces of some letters. */
function split(text: string, letters: number): string[][] {
  const splitter = new RowSplitter(";");
  const rows: string[][] = [];
  for (let at = 0; at < text.length; at += letters)
    rows.push(...splitter.push(text.slice(at, at + letters), false));
  return [...rows, ...splitter.push("", true)];
}

/** The independent reader: the package csv-parse. */
const parsed = (text: string): string[][] =>
  parse(text, {
    delimiter: ";",
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
  });

const cell = fc.string({ unit: fc.constantFrom("a", "Ł", " ", ";", '"', "\n", "\r", "0"), maxLength: 6 });
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
const plain = fc.string({ unit: fc.constantFrom("a", "b", " ", "é"), maxLength: 5 });
const written = fc.oneof(
  cell.map(quoted),
  plain,
  plain.map((text) => `a${text}"b`),
);
const table = fc
  .tuple(
    fc.array(fc.array(written, { minLength: 1, maxLength: 4 }), { maxLength: 6 }),
    fc.constantFrom("\n", "\r\n", "\r"),
  )
  .map(([rows, end]) => rows.map((cells) => cells.join(";") + end).join(""));

describe("RowSplitter", () => {
  test("gives the rows csv-parse gives, wherever the text is cut", () => {
    fc.assert(
      fc.property(table, fc.integer({ min: 1, max: 9 }), (text, letters) => {
        expect(split(text, letters)).toEqual(parsed(text));
      }),
      { numRuns: 1_000 },
    );
  });

  test("the last row needs no end of line, and blank lines are rows", () => {
    expect(split("a;b\n\nc", 1)).toEqual([["a", "b"], [""], ["c"]]);
  });

  test("a quotation left open is refused by its row, not read to the end of a long file in vain", () => {
    expect(() => split('a;b\nc;"d\n', 3)).toThrow(
      new UnreadableFile(
        "Row 2: a quotation mark is left open. Close it, or take it out, and load the file again",
      ),
    );
    const splitter = new RowSplitter(";");
    expect(() => {
      for (let piece = 0; piece < 10; piece += 1)
        splitter.push(`"${"x".repeat(1_000_000)}`.slice(piece ? 1 : 0), false);
    }).toThrow(UnreadableFile);
  });
});
