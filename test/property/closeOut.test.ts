import fc from "fast-check";
import { expect, it } from "vitest";
import { type CloseFacts, type CloseTopic, closeOut } from "@/lib/projects/closeOut";

const id = fc.uuid();
const name = fc.string({ minLength: 1, maxLength: 12 });
const listOf = <T>(one: fc.Arbitrary<T>, minLength = 1) => fc.array(one, { minLength, maxLength: 6 });

/** Facts of a project that may be closed. */
const inOrder: fc.Arbitrary<CloseFacts> = fc.record({
  axes: listOf(fc.record({ id, name, acceptedOn: fc.constant("2027-02-01"), unsigned: fc.constant(0) })),
  places: listOf(
    fc
      .record({ id, name, serial: name, firmware: name, added: fc.boolean() })
      .map(({ serial, firmware, added, ...place }) => ({
        ...{ ...place, fitted: { serial, firmware, added }, cameOut: !added },
      })),
  ),
  standing: listOf(fc.record({ id, name, units: fc.constant(0) }), 0),
  removed: listOf(
    fc.oneof(
      fc.record({
        ...{ id, name, bin: name },
        result: fc.constantFrom("usable" as const, "unproven" as const, "needs_repair" as const),
      }),
      fc.record({ id, name, bin: fc.constant(""), result: fc.constant("scrapped" as const) }),
    ),
  ),
  controllers: listOf(
    fc.record({
      ...{ id, name, tunedOn: fc.constant("2027-01-20") },
      backupOn: fc.constantFrom("2027-01-20", "2027-02-05"),
    }),
  ),
  stated: fc.constant(["register", "drawings", "levels"] as const),
  points: listOf(
    fc.oneof(
      fc.record({ id, name, blocks: fc.boolean(), done: fc.constant(true) }),
      fc.record({ id, name, blocks: fc.constant(false), done: fc.boolean() }),
    ),
    0,
  ),
  commitments: fc.constant([]),
  gates: listOf(fc.record({ id, name, passed: fc.constant(true) }), 0),
});

/** Takes one thing away and says which topic must notice. */
type Break = readonly [CloseTopic, (facts: CloseFacts, at: number) => CloseFacts];

function withOne<T>(list: readonly T[], at: number, change: (one: T) => T): T[] {
  return list.map((one, i) => (i === at % list.length ? change(one) : one));
}

const without = (kind: CloseFacts["stated"][number]) => (facts: CloseFacts) => ({
  ...{ ...facts, stated: facts.stated.filter((one) => one !== kind) },
});

const BREAKS: readonly Break[] = [
  ["axes", (f, at) => ({ ...f, axes: withOne(f.axes, at, (one) => ({ ...one, acceptedOn: null })) })],
  ["axes", (f) => ({ ...f, axes: [] })],
  ["safety", (f, at) => ({ ...f, axes: withOne(f.axes, at, (one) => ({ ...one, unsigned: 1 + (at % 4) })) })],
  ["standing", (f, at) => ({ ...f, standing: [...f.standing, { id: "s", name: "part", units: 1 + at }] })],
  ["fitted", (f, at) => ({ ...f, places: withOne(f.places, at, (one) => ({ ...one, fitted: null })) })],
  [
    "fitted",
    (f, at) => ({
      ...f,
      places: withOne(f.places, at, (one) => ({
        ...{ ...one, fitted: { added: true, serial: "1", firmware: "" } },
      })),
    }),
  ],
  [
    "accounted",
    (f, at) => ({
      ...f,
      places: withOne(f.places, at, (one) => ({
        ...{ ...one, cameOut: false, fitted: { added: false, serial: "1", firmware: "2" } },
      })),
    }),
  ],
  ["removed", (f, at) => ({ ...f, removed: withOne(f.removed, at, (one) => ({ ...one, result: null })) })],
  [
    "removed",
    (f, at) => ({
      ...f,
      removed: withOne(f.removed, at, (one) => ({ ...one, result: "usable" as const, bin: "" })),
    }),
  ],
  ["accounted", (f) => ({ ...f, removed: [], places: [] })],
  [
    "backups",
    (f, at) => ({ ...f, controllers: withOne(f.controllers, at, (c) => ({ ...c, backupOn: null })) }),
  ],
  [
    "backups",
    (f, at) => ({ ...f, controllers: withOne(f.controllers, at, (c) => ({ ...c, tunedOn: null })) }),
  ],
  [
    "backups",
    (f, at) => ({
      ...f,
      controllers: withOne(f.controllers, at, (one) => ({ ...one, backupOn: "2027-01-19" })),
    }),
  ],
  ["register", without("register")],
  ["drawings", without("drawings")],
  ["levels", without("levels")],
  ["points", (f) => ({ ...f, points: [...f.points, { id: "p", name: "open", blocks: true, done: false }] })],
  ["money", (f) => ({ ...f, commitments: [{ id: "c", name: "PO-1" }] })],
  ["gates", (f) => ({ ...f, gates: [...f.gates, { id: "g", name: "gate", passed: false }] })],
];

const lacking = (facts: CloseFacts) =>
  closeOut(facts)
    .filter(({ missing }) => missing.length > 0)
    .map(({ topic }) => topic);

it("lets a project close when nothing is missing", () => {
  fc.assert(
    fc.property(inOrder, (facts) => {
      expect(lacking(facts)).toEqual([]);
    }),
  );
});

it("never lets a project close with one thing missing, and says which", () => {
  fc.assert(
    fc.property(inOrder, fc.constantFrom(...BREAKS), fc.nat(20), (facts, [topic, take], at) => {
      const items = closeOut(take(facts, at));
      const found = items.filter(({ missing }) => missing.length > 0);
      expect(found.map((one) => one.topic)).toContain(topic);
      expect(found.every(({ missing }) => missing.every(({ text }) => text !== ""))).toBe(true);
    }),
    { numRuns: 400 },
  );
});

it("has a planted lack for each topic it looks at", () => {
  const topics = fc.sample(inOrder, { numRuns: 1, seed: 1 }).flatMap((facts) => closeOut(facts));
  expect(new Set(BREAKS.map(([topic]) => topic))).toEqual(new Set(topics.map(({ topic }) => topic)));
});

it("asks for a word where a project has no axes, takes nothing out, or leaves orders open", () => {
  fc.assert(
    fc.property(inOrder, (facts) => {
      const bare = { ...facts, axes: [], places: [], removed: [], controllers: [] };
      expect(lacking(bare)).toEqual(["axes", "accounted"]);
      const stated = [...facts.stated, "no_axes", "none_removed"] as const;
      expect(lacking({ ...bare, stated })).toEqual([]);
      const owing = { ...facts, commitments: [{ id: "c", name: "PO-1" }] };
      expect(lacking({ ...owing, stated: [...facts.stated, "commitments"] })).toEqual([]);
    }),
  );
});
