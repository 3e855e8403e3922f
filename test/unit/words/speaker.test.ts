import { describe, expect, test } from "vitest";
import { makeSpeaker } from "@/lib/words/speaker";

const say = makeSpeaker({
  Lines: "Anlagen",
  usable: "verwendbar",
  "No site yet": "Noch kein Standort",
  "{0} usable of {1} counted": "von {1} gezählten {0} verwendbar",
  "{0} drives": "{0} Regler",
  "{0} drive": "{0} Regler",
  "{0} of {1}": "{0} von {1}",
  "Account of {0}": "Konto von {0}",
  "Account of {0}, signed in since {1}": "Konto von {0}, angemeldet seit {1}",
  "{0} expected on {1} line{2}.": "{0} erwartet an {1} Anlage{2}.",
  "{0} expected on {1} lines{2}.": "{0} erwartet an {1} Anlagen{2}.",
  "a year": "im Jahr",
  "rank {0} of {1}": "Rang {0} von {1}",
  "Own stock": "Eigener Bestand",
  "{0} more lie {1}{2}; none is late.": "{0} weitere liegen {1}{2}; keiner ist verspätet.",
  "within {0} days": "in {0} Tagen",
  "Each row is kept.{0}": "Jede Zeile bleibt.{0}",
  "See {0} for the rows of {1}.": "Die Zeilen von {1} stehen unter {0}.",
});

describe("a text in another language", () => {
  test("is looked up whole", () => {
    expect(say("Lines")).toBe("Anlagen");
    expect(say("No site\u00a0yet")).toBe("Noch kein Standort");
  });

  test("takes the order of the other language, and puts what stands in its places into words too", () => {
    expect(say("12 drives usable of 1\u202f300 counted")).toBe(
      "von 1\u202f300 gezählten 12 Regler verwendbar",
    );
    expect(say("See \ue000 for the rows of \ue001.")).toBe("Die Zeilen von \ue001 stehen unter \ue000.");
  });

  test("takes the pattern with the most letters", () => {
    expect(say("Account of A. Person, signed in since today")).toBe(
      "Konto von A. Person, angemeldet seit today",
    );
  });

  test("is taken apart where no entry fits it whole", () => {
    expect(say("Lines · usable")).toBe("Anlagen · verwendbar");
    expect(say("Usable, No site yet.")).toBe("Verwendbar, Noch kein Standort.");
    expect(say(" Lines (usable)")).toBe(" Anlagen (verwendbar)");
  });

  test("stays as it is where the catalogue has nothing: names, numbers of parts, glue between names", () => {
    for (const text of ["Press 4", "TM-HR-010 B2", "1\u202f234.5", "", "House of Cards", "⟂"])
      expect(say(text)).toBe(text);
    expect(say("3 of 12")).toBe("3 von 12");
  });

  test("takes what may follow a word for what follows it, or for nothing, and never for more of the word", () => {
    expect(say("7 expected on 40 lines.")).toBe("7 erwartet an 40 Anlagen.");
    expect(say("7 expected on 1 line, 3 of 12.")).toBe("7 erwartet an 1 Anlage, 3 von 12.");
  });

  test("is no sentence of data torn by a short pattern, nor a pattern stretched over two sentences", () => {
    for (const text of ["Second name on the check of one axis", "Motors of the second half delivered"])
      expect(say(text)).toBe(text);
    expect(say("Nobody knows. 3 usable of 12 counted")).toBe("Nobody knows. von 12 gezählten 3 verwendbar");
  });

  test("keeps the number of a clause with it", () => {
    expect(say("a year, rank 2 of 40")).toBe("im Jahr, Rang 2 von 40");
    expect(say(": 3 of 12.")).toBe(": 3 von 12.");
  });

  test("fills the first of two places that touch, and leaves the other empty", () => {
    expect(say("19 more lie within 365 days; none is late.")).toBe(
      "19 weitere liegen in 365 Tagen; keiner ist verspätet.",
    );
  });

  test("takes nothing behind a sentence for nothing", () => {
    expect(say("Each row is kept.")).toBe("Jede Zeile bleibt.");
    expect(say("Each row is kept. 3 of 12")).toBe("Jede Zeile bleibt. 3 von 12");
  });

  test("knows a title within a sentence, but not a single word", () => {
    expect(say("own stock")).toBe("Eigener Bestand");
    expect(say("lines")).toBe("lines");
  });

  test("comes out the same the second time", () => {
    expect(say("3 of 12 drives")).toBe(say("3 of 12 drives"));
  });
});
