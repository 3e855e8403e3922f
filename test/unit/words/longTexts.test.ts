import { expect, test } from "vitest";
import { catalogueOf } from "@/lib/words/catalogue";
import { makeSpeaker } from "@/lib/words/speaker";

/** What a person may paste into a note: words that stand in very many patterns, marks, no end. */
const TEXTS = [
  "of a to in for by at on is the and or not with from ".repeat(400),
  "H of x, y of z; a: b (c) d · e → f. ".repeat(300),
  "1 of 2 of 3 of 4 of 5 of 6 of 7 of 8 of 9 of 10 of 11 of 12 of 13 of 14 ".repeat(100),
  "a, ".repeat(5_000),
  "(".repeat(5_000) + ")".repeat(5_000),
  "Drive exchanged after overcurrent, part of the line from the left to the right by day 3 of 9, ".repeat(
    100,
  ),
];

test("a text of any length and make is answered in a moment, by the whole catalogue", () => {
  const say = makeSpeaker(catalogueOf("de"));
  const begun = performance.now();
  for (const text of TEXTS) expect(say(text).length).toBeGreaterThan(0);
  // Milliseconds where nothing multiplies; minutes where it does.
  expect(performance.now() - begun).toBeLessThan(15_000);
});
