import { expect, test } from "vitest";
import { isProfileFamily, PROFILE_FAMILIES, profileFamilyName } from "@/lib/retrofit/profileFamilies";
import type { AxisFacts } from "@/lib/schema/axisFacts";
import {
  cableWords,
  endsWords,
  FACT_LABELS,
  homingWords,
  knownWords,
  plainFacts,
  readFacts,
  travelFindings,
  wayWords,
} from "@/lib/view/axisFacts";
import { familyFindings } from "@/lib/view/profileFamily";

const none = readFacts(() => "");
const facts = (given: Partial<AxisFacts>): AxisFacts => ({ ...none, ...given });

test("an empty form is not known in every field, and a filled one is read by kind", () => {
  expect(Object.keys(none)).toEqual(Object.keys(FACT_LABELS));
  expect(Object.values(none).every((value) => value === null)).toBe(true);
  const typed: Partial<Record<keyof AxisFacts, string>> = {
    ...{ powerCableLength: "0", powerCableInChain: "no", feedbackCableInChain: "yes", homing: "none" },
  };
  expect(readFacts((name) => typed[name] ?? "")).toEqual(
    facts({ powerCableLength: 0, powerCableInChain: false, feedbackCableInChain: true, homing: "none" }),
  );
  expect(plainFacts({ ...none, id: "x" } as AxisFacts)).toEqual(none);
});

test("what is not known is said so, and zero is a value", () => {
  expect(cableWords(none, "powerCable")).toBe("not known");
  expect(cableWords(facts({ powerCableLength: 0 }), "powerCable")).toBe(
    "type not known, 0 m, chain not known",
  );
  expect(wayWords(facts({ travel: 0, travelUnit: "mm" }))).toBe("0 mm");
  expect(endsWords(facts({ hardHigh: 355, travelUnit: "deg" }), "hard")).toBe("not known to 355 deg");
  expect(homingWords(none)).toBe("not known");
  expect(homingWords(facts({ homing: "to_switch", homeOffset: -1.5, travelUnit: "mm" }))).toBe(
    "to a switch, offset -1.5 mm",
  );
  expect(knownWords(none, "travel")).toBeNull();
  expect(knownWords(facts({ travelEvidence: "inferred" }), "travel")).toBe("inferred, day not known");
});

test("a software end beyond the hardware end strikes, one on it does not", () => {
  expect(travelFindings(facts({ hardLow: 0, softLow: 0, hardHigh: 10, softHigh: 10, travel: 10 }))).toEqual(
    [],
  );
  expect(travelFindings(facts({ hardLow: 0, softLow: -1 }))).toHaveLength(1);
  expect(travelFindings(facts({ hardHigh: 10, softHigh: 11, softLow: 0, travel: 10 }))).toHaveLength(2);
});

// IEC 61784-1:2010, table 1 (CPF 7 removed), its 2014 abstract (CPF 19); IEC 61784-2:2019, contents and abstract.
test("a communication profile family has a number of the standard and names no network", () => {
  expect(PROFILE_FAMILIES.map(({ number }) => number)).toEqual([
    1, 2, 3, 4, 5, 6, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21,
  ]);
  expect([isProfileFamily(7), isProfileFamily(16), isProfileFamily(22)]).toEqual([false, true, false]);
  expect(profileFamilyName(16)).toBe("CPF 16 (IEC 61784-1, IEC 61784-2)");
  expect(profileFamilyName(12)).toBe("CPF 12 (IEC 61784-2)");
  expect(profileFamilyName(42)).toBe("CPF 42");
});

test("a drive that names another family than its network strikes; one that names none does not", () => {
  const nodes = [
    { label: "A", drive: 16 },
    { label: "B", drive: null },
    { label: "C", drive: 12 },
  ];
  expect(familyFindings(16, nodes)).toEqual(["C: its drive names CPF 12, the network CPF 16."]);
  expect(familyFindings(null, nodes)).toEqual([]);
});
