import { describe, expect, it } from "vitest";
import { partKey } from "@/lib/intake/readPartNumber";
import { keyParts, suggestParts } from "@/lib/intake/suggestParts";

describe("what speaks for a part", () => {
  const parts = keyParts([
    {
      id: "own",
      maker: "Tarnholt",
      number: "TM-HR-020",
      text: "",
      aliases: [{ alias: "HR20X", siteCode: null }],
    },
    { id: "next", maker: "Tarnholt", number: "TM-HR-021", text: "", aliases: [] },
  ]);
  const ask = (written: string, maker = "") =>
    suggestParts({ written, maker, siteCode: "", detail: "" }, parts);

  it("orders look-alikes before one changed letter, and another maker counts against", () => {
    expect(ask("TM-HR-O20").map(({ partId }) => partId)).toEqual(["own"]);
    expect(ask("TM-HR-024").map(({ partId }) => partId)).toEqual(["next", "own"]);
    expect(ask("TM-HR-O20")[0]?.score).toBeGreaterThan(ask("TM-HR-024")[0]?.score ?? 1);
    expect(ask("TMHR020", "Tarnholt")[0]?.score).toBeGreaterThan(ask("TMHR020", "Corvane")[0]?.score ?? 1);
    expect(ask("HR2OX")[0]).toMatchObject({ partId: "own", why: expect.stringContaining("HR20X") });
  });

  it("is nothing where nothing is alike", () => {
    expect(ask("ZZ-99")).toEqual([]);
    expect(partKey("ZZ-99")).toBe("ZZ99");
  });
});
