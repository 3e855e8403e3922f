import {
  array,
  assert,
  asyncProperty,
  constantFrom,
  date,
  double,
  integer,
  oneof,
  property,
  record,
  string,
} from "fast-check";
import { describe, expect, it } from "vitest";
import { findHeader } from "@/lib/intake/findHeader";
import { readCell } from "@/lib/intake/readCell";
import { readDate } from "@/lib/intake/readDate";
import { readDecimal } from "@/lib/intake/readDecimal";
import { partKey, readPartNumber } from "@/lib/intake/readPartNumber";
import { readRegister } from "@/lib/intake/readRegister";
import { readTable } from "@/lib/intake/readTable";
import { REGISTERS } from "@/lib/intake/registers";
import { splitBody } from "@/lib/intake/splitBody";
import { suggestMapping, toMapping } from "@/lib/intake/suggestMapping";
import { encodeText } from "@/lib/intake/textEncoding";
import { guardFormula, unguardFormula, writeCsv } from "@/lib/intake/writeCsv";

const allFields = Object.values(REGISTERS).flatMap((register) => register.fields);
const customs = record({
  decimalMark: constantFrom("comma" as const, "point" as const),
  dateOrder: constantFrom("dayFirst" as const, "monthFirst" as const),
});
const nearNumbers = string({ unit: constantFrom(..."0123456789.,-+/ ()'%hEekQWT:") });
const anyText = oneof(string({ unit: "binary" }), nearNumbers);
// Byte order mark first: text that holds zero letters would else look like another encoding.
const withMark = (text: string) => Uint8Array.from([0xef, 0xbb, 0xbf, ...encodeText(text, "utf-8")]);

describe("reading", () => {
  it("never throws, whatever a cell holds, and tells what to do about what it refuses", () => {
    assert(
      property(anyText, constantFrom(...allFields), customs, (text, field, how) => {
        const { reading } = readCell(text, field, how);
        if (reading.state === "refused") expect(reading.remedy).not.toBe("");
      }),
      { numRuns: 3000 },
    );
  });

  it("never throws over whole sheets and loses no row", () => {
    const sheet = array(array(oneof(anyText, double(), integer()), { maxLength: 6 }), { maxLength: 12 });
    assert(
      property(sheet, constantFrom(...Object.values(REGISTERS)), customs, (rows, register, how) => {
        const place = findHeader(rows, register);
        const body = splitBody(rows, place);
        const mapping = toMapping(suggestMapping(body.headers, register));
        const reading = readRegister(body, { register, mapping, dialect: { ...how, columns: {} } });
        expect(reading.rows.length).toBe(body.rows.length);
        const listed = [...body.rows, ...body.skipped].map((row) => row.rowNumber);
        const filled = rows.flatMap((row, index) =>
          index >= place.row && row.some((cell) => /[\p{L}\p{N}]/u.test(String(cell))) ? [index + 1] : [],
        );
        expect(filled.every((rowNumber) => listed.includes(rowNumber))).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it("reads back what a European and an American would write for a number", () => {
    assert(
      property(integer({ min: -1_000_000_000, max: 1_000_000_000 }), (cents) => {
        const value = cents / 100;
        const american = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2 }).format(value);
        const german = new Intl.NumberFormat("de-DE", { minimumFractionDigits: 2 }).format(value);
        const swedish = new Intl.NumberFormat("sv-SE", { minimumFractionDigits: 2 }).format(value);
        expect(readDecimal(american, "point")).toMatchObject({ value });
        expect(readDecimal(german, "comma")).toMatchObject({ value });
        expect(readDecimal(swedish, "comma")).toMatchObject({ value });
      }),
    );
  });

  it("reads back every day in the orders sites write it", () => {
    assert(
      property(
        date({ min: new Date("1969-01-01"), max: new Date("2068-12-31"), noInvalidDate: true }),
        (moment) => {
          const on = moment.toISOString().slice(0, 10);
          const [year = "", month = "", day = ""] = on.split("-");
          for (const text of [
            on,
            `${Number(day)}.${Number(month)}.${year}`,
            `${day}.${month}.${year.slice(2)}`,
            `${day}/${month}/${year}`,
          ]) {
            expect(readDate(text, "dayFirst")).toMatchObject({ value: { on, precision: "day" } });
          }
          expect(readDate(`${month}/${day}/${year}`, "monthFirst")).toMatchObject({
            value: { on, precision: "day" },
          });
        },
      ),
    );
  });
});

describe("the key of a part", () => {
  it("does not change when made again, nor by case or separators", () => {
    assert(
      property(anyText, (text) => {
        const key = partKey(text);
        expect(partKey(key)).toBe(key);
        expect(partKey(` ${text}- `)).toBe(key);
      }),
    );
  });

  it("is the same for dashes, blanks and small letters", () => {
    const group = string({ unit: constantFrom(..."ABCXYZ0123456789"), minLength: 1, maxLength: 4 });
    assert(
      property(array(group, { minLength: 3, maxLength: 4 }), (groups) => {
        const dashed = readPartNumber(groups.join("-"));
        const blank = readPartNumber(groups.join(" ").toLowerCase());
        expect(dashed.state).toBe("value");
        expect(dashed.state === "value" && dashed.value.key).toBe(blank.state === "value" && blank.value.key);
      }),
    );
  });
});

describe("writing and reading back", () => {
  it("gives back every text through the guard against formulas", () => {
    assert(
      property(oneof(string(), string({ unit: constantFrom(..."'=+-@\t\ra") })), (text) => {
        expect(unguardFormula(guardFormula(text))).toBe(text);
        expect(/^[=+\-@\t\r]/.test(guardFormula(text))).toBe(false);
      }),
    );
  });

  it("gives back every table of text", async () => {
    const cell = oneof(string({ unit: "grapheme" }), string({ unit: constantFrom(...";,\t\"'=\r\n a") }));
    const table = array(array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 });
    await assert(
      asyncProperty(
        table,
        constantFrom(";" as const, "," as const, "\t" as const),
        async (rows, separator) => {
          const result = await readTable(withMark(writeCsv(rows, { separator })), { separator });
          const wanted = rows.map((row) => row.map((text) => (text === "" ? null : text)));
          expect(result).toMatchObject({ ok: true, value: { sheets: [{ rows: wanted }] } });
        },
      ),
      { numRuns: 300 },
    );
  });
});
