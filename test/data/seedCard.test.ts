import { expect, test } from "vitest";
import {
  codeOfLine,
  codeOfSite,
  company,
  controller,
  countBy,
  D0,
  lineOfMachine,
} from "@/test/data/seedLookup";

test("one machine's program has no source, and that machine stands on PIN-03", () => {
  const sourceless = company.Backup.filter(({ sourceAvailable }) => sourceAvailable === false);
  expect(sourceless).toHaveLength(1);
  const [copy] = sourceless;
  const machines = company.Machine.filter(({ controllerId }) => controllerId === copy?.controllerId);
  expect(machines).toHaveLength(1);
  expect(lineOfMachine(machines[0]?.id ?? "")).toBe("PIN-03");
});

test("copies are of controllers that are there, taken before the day and put back no earlier than taken", () => {
  expect(company.Backup.length).toBeGreaterThan(200);
  for (const { controllerId, takenOn, verifiedOn } of company.Backup) {
    expect(controller.has(controllerId)).toBe(true);
    expect(takenOn < D0).toBe(true);
    expect(verifiedOn === null || (verifiedOn >= takenOn && verifiedOn <= D0)).toBe(true);
  }
});

test("Thornby Vale keeps a program of every controller, San Tadeo of about half", () => {
  const share = (code: string) => {
    const own = company.Controller.filter(({ siteId }) => codeOfSite.get(siteId) === code);
    const kept = own.filter(({ id }) =>
      company.Backup.some(({ controllerId, kind }) => controllerId === id && kind === "program"),
    );
    return kept.length / own.length;
  };
  expect(share("THO")).toBe(1);
  expect(share("TAD")).toBeLessThan(0.7);
});

test("every site has its five functions, every line its shift lead, and no number stands twice", () => {
  const ofSite = company.Contact.filter(({ lineId }) => lineId === null);
  expect(countBy(ofSite, ({ siteId }) => codeOfSite.get(siteId))).toEqual({
    ...{ VEL: 5, OST: 5, KAR: 5, PIN: 5, TAD: 5, THO: 5 },
  });
  const lines = company.Contact.flatMap(({ lineId }) => (lineId === null ? [] : [codeOfLine.get(lineId)]));
  expect(new Set(lines).size).toBe(40);
  expect(new Set(company.Contact.map(({ phone }) => phone)).size).toBe(company.Contact.length);
});

test("every number lies in a range kept free for fiction", () => {
  const free = /^(\+49 30 23125\d{3}|\+46 8 46500 4\d{2}|\+44 1632 960\d{3}|\+1 202 555 01\d{2})$/;
  for (const { phone } of company.Contact) expect(phone).toMatch(free);
});
