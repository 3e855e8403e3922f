import { describe, expect, test } from "vitest";
import { COMMON_PASSWORDS } from "@/lib/access/commonPasswords";
import { passwordProblem } from "@/lib/access/passwordRule";

const owner = {
  email: "ines.varga@halvenor.example",
  name: "Ines Varga",
  places: ["OST", "Ostrava Mill", "THO", "Thornby Vale"],
};
const problem = (password: string) => passwordProblem(password, owner, COMMON_PASSWORDS);

describe("a new password", () => {
  test.each([
    "twelve letters",
    "kettle orchid 40 rails",
    "839201748362",
    "only small letters here",
    "ÜBERMORGEN GRÜNT",
    "halvenor turbine gold",
    "§§ %% && !! ?? #",
    "correcthorsebatterystaple",
  ])("of any kind of characters is taken: %s", (password) => {
    expect(problem(password)).toBeNull();
  });

  test.each(["ebbline-2026", "Ines.Varga.1987", "ThornbyVale99", "halvenor!!!!", "Wartung-Werk-1"])(
    "of words of the product, the plant or the person is refused: %s",
    (password) => {
      expect(problem(password)).toContain("words of Ebbline");
    },
  );

  test.each(["123456789012", "abcabcabcabc", "aaaaaaaaaaaaaaa", "abcdefghijklmnop"])(
    "that is a run or a repetition is refused: %s",
    (password) => {
      expect(problem(password)).toContain("a run or a repetition");
    },
  );

  test.each(["sunshine2026!", "dragonmonkey", "qwertyuiop1234", "!!football!!", "iloveyou-1999"])(
    "of the commonest ones is refused: %s",
    (password) => {
      expect(problem(password)).toContain("the commonest ones");
    },
  );
});
