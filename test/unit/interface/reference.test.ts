import { expect, it } from "vitest";
import { parametersOf } from "@/lib/interface/openapi";
import { OPERATIONS } from "@/lib/interface/operations";
import { referenceEntry } from "@/lib/interface/reference";

const entryOf = (name: string) => {
  const operation = OPERATIONS.find((one) => one.name === name);
  if (!operation) throw new Error(`there is no operation ${name}`);
  return referenceEntry(operation, "https://ebbline.example");
};

it("a call is shown with every field on its way from the top, what it is and what it means", () => {
  const { answer } = entryOf("listLines");
  expect(answer.find(({ name }) => name === "items[].figures.stopLoss")).toEqual({
    name: "items[].figures.stopLoss",
    kind: "object or null",
    text: "EUR a year; null where the cost of an hour is not known.",
  });
  expect(answer.map(({ name }) => name)).toContain("items[].figures.stopLoss.high");
  const { body } = entryOf("recordEvent");
  expect(Array.isArray(body) && body.find(({ name }) => name === "kind")).toEqual({
    ...{ name: "kind", kind: "one of failure, no_fault_found, removal", text: "" },
  });
});

it("an example holds what the call cannot do without", () => {
  for (const operation of OPERATIONS) {
    const { example } = referenceEntry(operation, "https://ebbline.example");
    const wanted = parametersOf(operation).filter(({ required }) => required);
    const missing = wanted.filter(({ name, in: place }) => place !== "path" && !example.includes(name));
    expect([operation.name, missing.map(({ name }) => name)]).toEqual([operation.name, []]);
    expect(example).not.toContain("{id}");
    expect(example.includes("-d @") || example.includes("--data-binary")).toBe(operation.body !== null);
  }
});
