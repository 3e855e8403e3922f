import { describe, expect, test } from "vitest";
import { dead, entries, missing } from "@/test/words/gather";

const placesOf = (text: string) => (text.match(/\{\d+\}/g) ?? []).sort().join();

describe("the catalogue of German", () => {
  test("has an entry for every text of the product", () => {
    expect(missing()).toEqual([]);
  });

  test("has none that nothing says any more", () => {
    expect(dead()).toEqual([]);
  });

  test("keeps the places of each text", () => {
    expect(entries().filter(({ english, other }) => placesOf(english) !== placesOf(other))).toEqual([]);
  });

  test("says a text in one way, and leaves none empty", () => {
    const all = entries();
    const said = new Map(all.map(({ english, other }) => [english, other]));
    expect(all.filter(({ english, other }) => said.get(english) !== other || other.trim() === "")).toEqual(
      [],
    );
  });
});
