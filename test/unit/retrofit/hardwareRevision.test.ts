import { expect, test } from "vitest";
import { isRevisionFrom } from "@/lib/retrofit/hardwareRevision";

test.each([
  ["C3", "C3", true],
  ["C2", "C3", false],
  ["D1", "C3", true],
  ["B9", "C", false],
  ["C1", "C", true],
  ["c4", "C3", true],
  ["C10", "C9", true],
  ["C", "C3", null],
  ["D", "C3", true],
  [null, "C", null],
  ["seven", "C", null],
])("%s from %s on: %s", (revision, lowest, answer) => {
  expect(isRevisionFrom(revision, lowest)).toBe(answer);
});
