import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isFree, licencesOf } from "@/lib/launch/licences";

test("of a choice of licences one free one is enough, of several at once each must be free", () => {
  expect(isFree("MIT")).toBe(true);
  expect(isFree("(MIT OR GPL-3.0-or-later)")).toBe(true);
  expect(isFree("Apache-2.0 AND LGPL-3.0-or-later")).toBe(false);
  expect(isFree("MIT AND ISC AND BSD-3-Clause")).toBe(true);
  expect(isFree("none named")).toBe(false);
});

test("what is to be looked at stands first, and says whether it is shipped", () => {
  const found = licencesOf({
    "": { version: "1.0.0", license: "UNLICENSED" },
    "node_modules/a": { version: "1.0.0", license: "MIT" },
    "node_modules/b/node_modules/a": { version: "2.0.0", license: "MIT", dev: true },
    "node_modules/c": { version: "3.0.0", license: "GPL-3.0-only", dev: true },
  });
  expect(found).toEqual([
    { licence: "GPL-3.0-only", packages: ["c 3.0.0"], isShipped: false, standing: "look" },
    { licence: "MIT", packages: ["a 1.0.0", "a 2.0.0"], isShipped: true, standing: "free" },
  ]);
});

/** Each was looked at: how it comes along, and what follows from it. */
const LOOKED_AT: Readonly<Record<string, string>> = {
  "EPL-2.0": "unchanged, as a library",
  "LGPL-3.0-or-later": "pictures, never loaded by the product; a shared library that can be replaced",
  "Apache-2.0 AND LGPL-3.0-or-later": "the same",
  "Apache-2.0 AND LGPL-3.0-or-later AND MIT": "the same",
  "none named": "png-js, MIT in its own folder",
};

test("no package came in under a licence that nobody has looked at", () => {
  const lock = JSON.parse(readFileSync("package-lock.json", "utf8"));
  const found = licencesOf(lock.packages).filter(({ standing }) => standing === "look");
  expect(found.map(({ licence }) => licence).filter((licence) => !(licence in LOOKED_AT))).toEqual([]);
});
