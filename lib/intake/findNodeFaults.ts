/** One axis on a motion network as it would be stored. */
export interface NetworkNode {
  readonly axisId: string;
  /** What people call it, e.g. "VEL-01 M02 A03". */
  readonly axis: string;
  readonly networkId: string;
  readonly network: string;
  readonly nodeAddress: number | null;
  /** Place in the ring's light path, from 1. */
  readonly ringOrder: number | null;
  /** Row of the file that says so; null is stored and not in the file. */
  readonly rowNumber: number | null;
}

export interface NodeFault {
  readonly rowNumber: number;
  readonly field: "nodeAddress" | "ringOrder";
  readonly problem: string;
  readonly remedy: string;
}

type Field = NodeFault["field"];

const WORDS = {
  nodeAddress: {
    what: "Node address",
    remedy: "Read both addresses off the drives and correct the wrong one",
  },
  ringOrder: { what: "Place", remedy: "Follow the fibre from drive to drive and number them in that order" },
} as const;

/** Who has each number; what is stored comes first, so that the file's row is the one refused. */
function takenTwice(nodes: readonly NetworkNode[], field: Field): NodeFault[] {
  const first = new Map<number, NetworkNode>();
  const stored = nodes.filter(({ rowNumber }) => rowNumber === null);
  return [...stored, ...nodes.filter(({ rowNumber }) => rowNumber !== null)].flatMap((node) => {
    const value = node[field];
    if (value === null) return [];
    const holder = first.get(value);
    if (!holder) first.set(value, node);
    if (!holder || node.rowNumber === null) return [];
    const where = holder.rowNumber === null ? "" : ` (row ${holder.rowNumber})`;
    const problem = `${WORDS[field].what} ${value} of ${node.network} is taken by ${holder.axis}${where}`;
    return [{ rowNumber: node.rowNumber, field, problem, remedy: WORDS[field].remedy }];
  });
}

/** A ring is closed: places run from 1 without a gap, so rows beyond a missing place cannot be right yet. */
function beyondGap(nodes: readonly NetworkNode[]): NodeFault[] {
  const places = new Set(nodes.flatMap(({ ringOrder }) => ringOrder ?? []));
  const last = Math.max(0, ...places);
  let missing = 1;
  while (places.has(missing)) missing += 1;
  if (missing > last) return [];
  return nodes.flatMap(({ rowNumber, ringOrder, network }) => {
    if (rowNumber === null || ringOrder === null || ringOrder < missing) return [];
    const problem = `The ring ${network} has a place ${ringOrder} but no place ${missing}`;
    const remedy = `Add the axis at place ${missing}, or number the places without a gap`;
    return [{ rowNumber, field: "ringOrder" as const, problem, remedy }];
  });
}

/** Rows that would put two axes on one address or one place of a network, or leave a gap in a ring. */
export function findNodeFaults(nodes: readonly NetworkNode[]): NodeFault[] {
  const byNetwork = new Map<string, NetworkNode[]>();
  for (const node of nodes) byNetwork.set(node.networkId, [...(byNetwork.get(node.networkId) ?? []), node]);
  return [...byNetwork.values()].flatMap((own) => [
    ...takenTwice(own, "nodeAddress"),
    ...takenTwice(own, "ringOrder"),
    ...beyondGap(own),
  ]);
}
