import { expect, test } from "vitest";
import type { Evidence } from "@/lib/risk/evaluation";
import { evidenceOn } from "@/lib/risk/evidenceOn";

const stated = { approvedOn: "2025-01-01", validUntil: "2026-11-30" };

test.each<[Evidence, Evidence]>([
  ["measured", "documented"],
  ["documented", "inferred"],
  ["inferred", "assumed"],
  ["assumed", "assumed"],
])("%s is %s once the approval has run out, and not before", (evidence, worse) => {
  expect(evidenceOn({ ...stated, evidence }, "2026-11-30")).toBe(evidence);
  expect(evidenceOn({ ...stated, evidence }, "2026-12-01")).toBe(worse);
});

test("without an end, or without an approval that could end, it stays as stated", () => {
  const evidence = "documented";
  expect(evidenceOn({ ...stated, evidence, validUntil: null }, "2030-01-01")).toBe(evidence);
  expect(evidenceOn({ ...stated, evidence, approvedOn: null }, "2030-01-01")).toBe(evidence);
});
