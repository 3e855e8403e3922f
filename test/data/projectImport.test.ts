import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readProject } from "@/lib/data/project";
import { addCost } from "@/lib/data/projectCost";
import { importCosts, previewCosts, readCostImports, takeBackCosts } from "@/lib/data/projectImport";
import { countRows } from "@/lib/view/costImport";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let projectId = "";

beforeAll(async () => {
  made = await freshDatabase("project_import");
  world = await makeTwoSites();
  const project = await database().project.create({
    data: {
      ...{ siteId: world.south, lineId: world.lines["SUD-01"] ?? "", code: "SUD-01-R1", name: "Retrofit" },
      ...{ currency: "PLN", budget: "1000000.00" },
    },
  });
  projectId = project.id;
});

afterAll(() => made.close());

const engineer = () => personWith("engineer", world.south);
const handed = (text: string, answers: object = {}) => ({
  ...{ projectId, fileName: "ledger.csv", answers },
  bytes: new TextEncoder().encode(text),
});
const numbers = async () =>
  ((await readProject(engineer(), "SUD-01-R1"))?.costs ?? []).map(({ reference }) => reference).sort();

/** As a ledger writes it: German heads, a decimal comma, a total at the end; one row twice, one in no currency. */
const FILE = `Belegart;Belegnummer;Buchungsdatum;Betrag;Währung;Beschreibung;Kostenart;Bestellnummer
Bestellung;B-1;13.11.2026;120.000,50;PLN;Antriebe;Antriebe;
Rechnung;R-1;20.11.2026;20.000,25;;Erste Rate;Antriebe;B-1
Rechnung;R-2;21.11.2026;1.000,00;EUR;Reise;Planung;
Rechnung;R-2;21.11.2026;1.000,00;EUR;Reise;Planung;
Rechnung;R-3;22.11.2026;5,00;QQQ;Unbekannt;;
Summe;;;142.005,75;;;;
`;

describe("orders and invoices from a file", () => {
  it("are read by their heads and told row by row, and nothing is taken over yet", async () => {
    const seen = await previewCosts(engineer(), handed(FILE));
    if (!seen.ok) throw new Error(seen.error.reason);
    const { rows, questions, skipped } = seen.value;
    expect(questions).toEqual([]);
    expect(skipped).toBe(1);
    expect(rows.map(({ rowNumber, state }) => `${rowNumber} ${state}`)).toEqual([
      ...["2 new", "3 new", "4 new", "5 error", "6 error"],
    ]);
    expect(rows[0]?.cost).toMatchObject({
      ...{ kind: "committed", reference: "B-1", amount: "120000.50", currency: "PLN", costClass: "drives" },
    });
    expect(rows[4]?.words.join(" ")).toMatch(/no currency of ISO 4217.*QQQ/);
    expect(await numbers()).toEqual([]);
  });

  it("are taken over once; the same file again changes nothing", async () => {
    const taken = await importCosts(engineer(), handed(FILE));
    expect(taken).toMatchObject({ ok: true, value: { added: 3 } });
    expect(await numbers()).toEqual(["B-1", "R-1", "R-2"]);
    const stored = (await readProject(engineer(), "SUD-01-R1"))?.costs.find((one) => one.reference === "R-2");
    // 1,000.00 euros at the budget rate of 4 złoty.
    expect(stored).toMatchObject({
      amount: "4000.00",
      own: { amount: "1000.00", currency: "EUR", rate: "4" },
    });
    const again = await previewCosts(engineer(), handed(FILE));
    expect(again.ok && countRows(again.value)).toEqual({ added: 0, same: 3, refused: 2 });
    expect(await importCosts(engineer(), handed(FILE))).toMatchObject({ error: { code: "impossible" } });
    expect(await numbers()).toHaveLength(3);
  });

  it("with a number booked otherwise are left out and say what is booked", async () => {
    const other = FILE.replace("120.000,50", "130.000,50");
    const seen = await previewCosts(engineer(), handed(other));
    expect(seen.ok && seen.value.rows[0]).toMatchObject({
      state: "error",
      words: [expect.stringMatching(/B-1 is booked already, with PLN.120.000\.50 on 13 Nov 2026/)],
    });
  });

  it("are asked about where numbers or days can be read in two ways", async () => {
    const text = "Kind;Number;Day;Amount\nOrdered;Z-1;03/04/2026;1.234\n";
    const seen = await previewCosts(engineer(), handed(text));
    expect(seen.ok && seen.value.questions.map(({ custom }) => custom).sort()).toEqual([
      ...["dateOrder", "decimalMark"],
    ]);
    expect(await importCosts(engineer(), handed(text))).toMatchObject({ error: { code: "invalid" } });
    const answered = await previewCosts(
      engineer(),
      handed(text, { decimalMark: "comma", dateOrder: "dayFirst" }),
    );
    expect(answered.ok && answered.value.rows[0]?.cost).toMatchObject({
      amount: "1234.00",
      spentOn: "2026-04-03",
    });
    const places = await previewCosts(
      engineer(),
      handed(text, { decimalMark: "point", dateOrder: "dayFirst" }),
    );
    expect(places.ok && places.value.rows[0]?.words.join(" ")).toContain("PLN has 2 places");
  });

  it("go back in one step, with what was entered by hand left alone", async () => {
    await addCost(engineer(), {
      ...{
        projectId,
        kind: "actual",
        amount: "1.00",
        currency: null,
        spentOn: "2026-11-01",
        text: "By hand",
      },
      ...{ reference: "H-1", costClass: null, orderReference: null },
    });
    const [file] = await readCostImports(engineer(), "SUD-01-R1");
    const which = { projectId, importId: file?.id ?? "" };
    expect(await takeBackCosts(personWith("engineer", world.north), which)).toMatchObject({
      error: { code: "missing" },
    });
    expect(await takeBackCosts(engineer(), which)).toMatchObject({ ok: true, value: { removed: 3 } });
    expect(await numbers()).toEqual(["H-1"]);
    expect(await takeBackCosts(engineer(), which)).toMatchObject({ error: { code: "missing" } });
    expect((await readCostImports(engineer(), "SUD-01-R1"))[0]?.takenBackBy).toBe("Person");
    expect(await readCostImports(personWith("viewer", world.north), "SUD-01-R1")).toEqual([]);
  });

  it("are not read for a project of another site, just as for none", async () => {
    for (const actor of [personWith("engineer", world.north), personWith("viewer", world.south)])
      expect(await previewCosts(actor, handed(FILE))).toMatchObject({ error: { code: "missing" } });
  });

  it("that are no table say what to do", async () => {
    const noTable = await previewCosts(engineer(), {
      ...handed(""),
      bytes: new Uint8Array([0x50, 0x4b, 0x03, 0x04, 0, 0]),
    });
    expect(noTable).toMatchObject({ error: { code: "invalid", fields: { file: expect.any(String) } } });
  });
});
