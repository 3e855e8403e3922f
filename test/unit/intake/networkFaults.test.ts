import { describe, expect, it } from "vitest";
import { findNodeFaults, type NetworkNode } from "@/lib/intake/findNodeFaults";
import { findSuccessorLoops } from "@/lib/intake/findSuccessorLoops";

const node = (axis: string, given: Partial<NetworkNode> = {}): NetworkNode => ({
  ...{
    axisId: axis,
    axis,
    networkId: "r1",
    network: "R1",
    nodeAddress: null,
    ringOrder: null,
    rowNumber: null,
  },
  ...given,
});

describe("a network in a file", () => {
  it("without numbers, or with each number once from 1, has no fault", () => {
    const ring = [1, 2, 3].map((n) => node(`A${n}`, { nodeAddress: n + 10, ringOrder: n, rowNumber: n + 1 }));
    expect(findNodeFaults(ring)).toEqual([]);
    expect(findNodeFaults([node("A1"), node("A2")])).toEqual([]);
    expect(findNodeFaults([])).toEqual([]);
  });

  it("refuses the second row of one address and says who has it", () => {
    const faults = findNodeFaults([
      node("A1", { nodeAddress: 7, rowNumber: 2 }),
      node("A2", { nodeAddress: 7, rowNumber: 3 }),
    ]);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({
      rowNumber: 3,
      field: "nodeAddress",
      problem: "Node address 7 of R1 is taken by A1 (row 2)",
    });
  });

  it("refuses the row, not what is stored, whichever is named first", () => {
    const faults = findNodeFaults([
      node("A2", { ringOrder: 1, rowNumber: 5 }),
      node("A1", { ringOrder: 1, rowNumber: null }),
    ]);
    expect(faults).toMatchObject([{ rowNumber: 5, problem: "Place 1 of R1 is taken by A1" }]);
  });

  it("knows the same address on another network as another place", () => {
    const other = { networkId: "r2", network: "R2" };
    const nodes = [
      node("A1", { nodeAddress: 7, rowNumber: 2 }),
      node("A2", { nodeAddress: 7, rowNumber: 3, ...other }),
    ];
    expect(findNodeFaults(nodes)).toEqual([]);
  });

  it("refuses the rows beyond a gap and names the place that is missing", () => {
    const ring = [1, 2, 4, 5].map((n) => node(`A${n}`, { ringOrder: n, rowNumber: n + 1 }));
    expect(findNodeFaults(ring).map(({ rowNumber, problem }) => [rowNumber, problem])).toEqual([
      [5, "The ring R1 has a place 4 but no place 3"],
      [6, "The ring R1 has a place 5 but no place 3"],
    ]);
  });

  it("closes a gap with what is stored", () => {
    const nodes = [node("A1", { ringOrder: 1 }), node("A2", { ringOrder: 2, rowNumber: 2 })];
    expect(findNodeFaults(nodes)).toEqual([]);
  });
});

describe("successors in a file", () => {
  const step = (partId: string, successorId: string, rowNumber: number | null) => ({
    partId,
    successorId,
    rowNumber,
  });

  it("may form a chain and may part", () => {
    expect(findSuccessorLoops([step("a", "b", 2), step("b", "c", 3), step("a", "c", 4)])).toEqual([]);
  });

  it("are refused where a part follows itself, at once or over others", () => {
    expect(findSuccessorLoops([step("a", "a", 2)])).toEqual([{ rowNumber: 2, partIds: ["a", "a"] }]);
    const round = findSuccessorLoops([step("a", "b", null), step("b", "c", null), step("c", "a", 9)]);
    expect(round).toEqual([{ rowNumber: 9, partIds: ["c", "a", "b", "c"] }]);
  });

  it("name every row of a loop that is in the file, and no other", () => {
    const rows = findSuccessorLoops([step("a", "b", 2), step("b", "a", 3), step("b", "c", 4)]);
    expect(rows.map(({ rowNumber }) => rowNumber)).toEqual([2, 3]);
  });
});
