import { expect, test } from "vitest";
import { dialectOf, openRegister } from "@/lib/intake/openRegister";
import { readRegister } from "@/lib/intake/readRegister";
import { REGISTERS } from "@/lib/intake/registers";
import { toMapping } from "@/lib/intake/suggestMapping";
import { writeCsv } from "@/lib/intake/writeCsv";
import { LOADING_ORDER, registerPattern } from "@/lib/view/importPattern";

test.each(Object.values(REGISTERS))("the pattern of $label reads back without an error", async (register) => {
  const text = writeCsv(registerPattern(register), { separator: ";" });
  const opened = await openRegister(new TextEncoder().encode(text), register);
  if (!opened.ok) throw new Error(opened.error);
  const { body, suggestions } = opened.value;
  expect(suggestions.map(({ field }) => field)).toEqual(register.fields.map(({ key }) => key));
  const mapping = toMapping(suggestions);
  const finding = dialectOf(body, mapping, register);
  expect(finding.ask).toEqual([]);
  const reading = readRegister(body, { register, mapping, dialect: finding.proposal });
  expect(reading.problems).toEqual([]);
  expect(reading.rows.flatMap(({ problems }) => problems).filter((one) => one.severity === "error")).toEqual(
    [],
  );
  expect(reading.rows.length).toBe(register.key === "axes" ? 2 : 1);
});

test("every register has its place in the loading order, once", () => {
  expect(LOADING_ORDER.map(({ key }) => key).sort()).toEqual(Object.keys(REGISTERS).sort());
});
