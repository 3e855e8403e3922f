import { describe, expect, it } from "vitest";
import { CONTROLLER_END, type RingRow, readRing } from "@/lib/retrofit/ring";

const row = (axis: string, nodeAddress: number | null, ringOrder: number | null): RingRow => ({
  axisId: axis,
  label: axis,
  nodeAddress,
  ringOrder,
});

/** The ring of rows that are taken. */
function ringOf(rows: readonly RingRow[]) {
  const read = readRing(rows);
  if (!read.ok) throw new Error(`row ${read.error.row}: ${read.error.reason}`);
  return read.value;
}

const kinds = (rows: readonly RingRow[]) => ringOf(rows).findings.map(({ kind }) => kind);

describe("a ring", () => {
  it("is put into light-path order and closed by the controller", () => {
    const ring = ringOf([row("C", 3, 3), row("A", 1, 1), row("B", 2, 2)]);
    expect(ring.nodes.map(({ label, upstream, downstream }) => [upstream, label, downstream])).toEqual([
      [CONTROLLER_END, "A", "B"],
      ["A", "B", "C"],
      ["B", "C", CONTROLLER_END],
    ]);
    expect(ring.findings).toEqual([]);
  });

  it("without a node has nothing to find", () => {
    expect(ringOf([])).toEqual({ nodes: [], findings: [] });
  });

  it("names the places at which no node is recorded, and no neighbour across them", () => {
    const ring = ringOf([row("A", 2, 2), row("B", 5, 5)]);
    expect(ring.findings).toEqual([
      { kind: "gap", from: 1, to: 1 },
      { kind: "gap", from: 3, to: 4 },
    ]);
    expect(ring.nodes.map(({ upstream, downstream }) => [upstream, downstream])).toEqual([
      [null, null],
      [null, CONTROLLER_END],
    ]);
  });

  it("names two nodes at one place, and no neighbour of theirs", () => {
    const ring = ringOf([row("A", 1, 1), row("B", 2, 2), row("C", 3, 2), row("D", 4, 3)]);
    expect(ring.findings).toEqual([{ kind: "place-doubled", place: 2, labels: ["B", "C"] }]);
    expect(ring.nodes[0]?.downstream).toBeNull();
    expect(ring.nodes[3]?.upstream).toBeNull();
  });

  it("names an address that is set twice, wherever the nodes stand", () => {
    expect(ringOf([row("A", 7, 1), row("B", 8, 2), row("C", 7, null)]).findings).toEqual([
      { kind: "address-doubled", address: 7, labels: ["A", "C"] },
      { kind: "not-placed", label: "C" },
    ]);
  });

  it("names neighbours recorded the wrong way round", () => {
    expect(ringOf([row("A", 1, 1), row("B", 2, 3), row("C", 3, 2), row("D", 4, 4)]).findings).toEqual([
      { kind: "order", label: "B", after: "C" },
    ]);
  });

  it("compares over a node whose address nobody knows", () => {
    expect(kinds([row("A", 4, 1), row("B", null, 2), row("C", 3, 3)])).toEqual(["order", "address-unknown"]);
  });

  it("does not know where the path ends while a node has no place", () => {
    const { nodes } = ringOf([row("A", 1, 1), row("B", 2, null)]);
    expect(nodes.map(({ label, downstream }) => [label, downstream])).toEqual([
      ["A", null],
      ["B", null],
    ]);
  });

  it("refuses one axis on two nodes, naming the row and the reason", () => {
    expect(readRing([row("A", 1, 1), row("B", 2, 2), row("A", 3, 3)])).toEqual({
      ok: false,
      error: { row: 3, reason: "A already stands on the node of row 1: an axis has one node." },
    });
  });

  it.each([-1, 1.5, Number.NaN])("refuses %s as a place and as an address", (value) => {
    expect(readRing([row("A", 1, value)])).toMatchObject({ ok: false, error: { row: 1 } });
    expect(readRing([row("A", 1, 1), row("B", value, 2)])).toMatchObject({ ok: false, error: { row: 2 } });
  });

  it("takes address 0, and refuses place 0", () => {
    expect(kinds([row("A", 0, 1)])).toEqual([]);
    expect(readRing([row("A", 1, 0)])).toMatchObject({ ok: false, error: { row: 1 } });
  });
});
