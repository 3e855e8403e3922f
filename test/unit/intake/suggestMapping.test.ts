import { describe, expect, it } from "vitest";
import { foldText } from "@/lib/intake/foldText";
import { REGISTERS } from "@/lib/intake/registers";
import { headersKey, suggestMapping, toMapping } from "@/lib/intake/suggestMapping";

describe("suggesting fields for headers", () => {
  it("reads a German storeroom's headers", () => {
    const headers = [
      "Werk",
      "Lagerplatz",
      "Hersteller",
      "Bestellnummer",
      "Hardwarestand",
      "Bestand",
      "Zustand",
      "Inventurdatum",
      "Bemerkung",
    ];
    expect(toMapping(suggestMapping(headers, REGISTERS.stock))).toEqual({
      Werk: "siteCode",
      Lagerplatz: "bin",
      Hersteller: "maker",
      Bestellnummer: "partNumber",
      Hardwarestand: "revision",
      Bestand: "quantity",
      Zustand: "state",
      Inventurdatum: "countedOn",
      Bemerkung: "note",
    });
  });

  it("reads Polish work orders, with units in brackets and accents left out", () => {
    const headers = ["Zaklad", "Linia", "Maszyna", "Oś", "Zgłoszono", "Postój [h]", "Nr zlecenia", "Opis"];
    expect(suggestMapping(headers, REGISTERS.events).map((one) => one.field)).toEqual([
      "siteCode",
      "lineCode",
      "machineCode",
      "position",
      "happenedAt",
      "downtimeHours",
      "reference",
      "text",
    ]);
  });

  it("finds misspelt headers by likeness and says so", () => {
    const [one] = suggestMapping(["Mashine code"], REGISTERS.axes);
    expect(one).toMatchObject({ field: "machineCode", why: "similar" });
    expect(one?.score).toBeLessThan(0.98);
  });

  it("gives a field to the better of two headers and none to the other", () => {
    const suggestions = suggestMapping(["Plant", "Site"], REGISTERS.stock);
    expect(suggestions).toMatchObject([{ field: null }, { field: "siteCode", score: 1 }]);
  });

  it("leaves a strange header out", () => {
    expect(suggestMapping(["Colour of the lid"], REGISTERS.assets)).toEqual([
      { header: "Colour of the lid", field: null, score: 0, why: "none" },
    ]);
  });

  it.each(Object.values(REGISTERS))("maps every label of $key to its own field", (register) => {
    const labels = register.fields.map((field) => field.label);
    expect(suggestMapping(labels, register).map((one) => one.field)).toEqual(
      register.fields.map((field) => field.key),
    );
  });

  it.each(Object.values(REGISTERS))("has no word of $key standing for two fields", (register) => {
    const owner = new Map<string, string>();
    for (const field of register.fields) {
      for (const word of new Set([field.label, ...field.synonyms].map(foldText))) {
        expect(owner.get(word), `${word} of ${field.key}`).toBeUndefined();
        owner.set(word, field.key);
      }
    }
  });

  it("finds a saved mapping again when the columns are shuffled", () => {
    expect(headersKey(["Site", "Part number"])).toBe(headersKey(["PART NUMBER", "site "]));
    expect(headersKey(["Site"])).not.toBe(headersKey(["Site", "Bin"]));
  });
});
