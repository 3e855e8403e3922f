import { expect, it } from "vitest";
import { openRegister } from "@/lib/intake/openRegister";
import { REGISTERS } from "@/lib/intake/registers";
import { encodeText } from "@/lib/intake/textEncoding";
import { viewOpening } from "@/lib/view/importOpening";
import { choiceOfForm } from "@/lib/view/importReading";
import { rowXml, writtenWorkbook } from "@/seed/dirtyFiles/workbookFile";

const TEXT = "Obsolete drives\nSite;Bin;Part number;Note\nOST;R1;TM-HR-020;Wspornik łożyska\n";
const bytes = encodeText(TEXT, "windows-1250");

async function open(file: Uint8Array, chosen: Parameters<typeof openRegister>[2] = {}) {
  const opened = await openRegister(file, REGISTERS.stock, chosen);
  if (!opened.ok) throw new Error(opened.error);
  return viewOpening(opened.value, chosen);
}

function form(values: Readonly<Record<string, string>>): FormData {
  const made = new FormData();
  for (const [name, value] of Object.entries(values)) made.set(name, value);
  return made;
}

it("shows the first rows as they stand, with the letters of their columns", async () => {
  const opening = await open(bytes);
  expect(opening).toMatchObject({ encoding: "windows-1250", separator: ";", headerRow: 2, headerLines: 1 });
  expect(opening.letters).toEqual(["A", "B", "C", "D"]);
  expect(opening.firstRows[0]).toEqual({
    rowNumber: 1,
    cells: { A: "Obsolete drives", B: "", C: "", D: "" },
  });
});

it("keeps what a person chose and leaves to be found what they did not touch", async () => {
  const opening = await open(bytes);
  const asFound = { encoding: "windows-1250", separator: ";", headerRow: "2" };
  expect(choiceOfForm(opening, form(asFound))).toEqual({});
  expect(choiceOfForm(opening, form({ ...asFound, encoding: "windows-1252" }))).toEqual({
    encoding: "windows-1252",
  });
  expect(choiceOfForm(opening, form({ ...asFound, headerRow: "1" }))).toEqual({
    headerRow: 1,
    headerLines: 1,
  });
  const chosen = { encoding: "windows-1252", headerRow: 1, headerLines: 1 } as const;
  const again = form({ ...asFound, encoding: "windows-1252", headerRow: "1" });
  expect(choiceOfForm(await open(bytes, chosen), again)).toEqual(chosen);
});

it("reads by the choice: letters, separator, sheet and row of names", async () => {
  expect((await open(bytes, { separator: "," })).firstRows[1]?.cells).toEqual({
    A: "Site;Bin;Part number;Note",
  });
  expect((await open(bytes, { headerRow: 1 })).headerRow).toBe(1);
  const workbook = writtenWorkbook({
    sheets: [
      { name: "Notes", rows: rowXml(1, ["x", "y"]) + rowXml(2, ["1", "2"]) },
      { name: "Stock", state: "hidden", rows: rowXml(1, ["Site", "Bin"]) + rowXml(2, ["OST", "R1"]) },
    ],
  });
  expect((await open(workbook)).sheet).toBe("Notes");
  expect(await open(workbook, { sheet: "Stock" })).toMatchObject({
    sheet: "Stock",
    notes: ["The sheet is hidden in the workbook."],
    sheets: [
      { name: "Notes", hidden: false },
      { name: "Stock", hidden: true },
    ],
  });
});

it("says what to do about a sheet or a row that is not there", async () => {
  const none = await openRegister(bytes, REGISTERS.stock, { headerRow: 9 });
  expect(none).toMatchObject({ ok: false, error: expect.stringContaining("below the last row, 3") });
  const lost = await openRegister(bytes, REGISTERS.stock, { sheet: "Old" });
  expect(lost).toMatchObject({ ok: false, error: expect.stringContaining("no sheet “Old”") });
});
