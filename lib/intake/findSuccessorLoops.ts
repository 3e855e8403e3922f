/** One part follows another, as it would be stored. */
export interface SuccessorStep {
  readonly partId: string;
  readonly successorId: string;
  /** Row of the file that says so; null is stored and not in the file. */
  readonly rowNumber: number | null;
}

export interface SuccessorLoop {
  readonly rowNumber: number;
  /** Parts of the loop, the row's own first and again last. */
  readonly partIds: readonly string[];
}

/** Way from one part to another along the steps, both ends in it; null is none. */
function wayTo(next: ReadonlyMap<string, readonly string[]>, from: string, to: string): string[] | null {
  const cameFrom = new Map<string, string | null>([[from, null]]);
  const open = [from];
  for (let part = open.shift(); part !== undefined; part = open.shift()) {
    if (part === to) break;
    for (const successor of next.get(part) ?? []) {
      if (cameFrom.has(successor)) continue;
      cameFrom.set(successor, part);
      open.push(successor);
    }
  }
  if (!cameFrom.has(to)) return null;
  const way: string[] = [];
  for (let part: string | null = to; part !== null; part = cameFrom.get(part) ?? null) way.unshift(part);
  return way;
}

/** Rows of the file that make a part follow itself, over however many steps. */
export function findSuccessorLoops(steps: readonly SuccessorStep[]): SuccessorLoop[] {
  const next = new Map<string, string[]>();
  for (const { partId, successorId } of steps) next.set(partId, [...(next.get(partId) ?? []), successorId]);
  return steps.flatMap(({ rowNumber, partId, successorId }) => {
    const back = rowNumber === null ? null : wayTo(next, successorId, partId);
    return rowNumber === null || back === null ? [] : [{ rowNumber, partIds: [partId, ...back] }];
  });
}
