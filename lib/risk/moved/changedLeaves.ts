/** A plain value without parts. */
export type Leaf = string | number | boolean | null;

export interface ChangedLeaf {
  /** Names from the root down, e.g. `classes.drive.leadYears`. */
  readonly path: string;
  readonly before: Leaf;
  readonly after: Leaf;
}

/** The values inside two plain trees that differ, by path; one that is missing on a side is null there. */
export function changedLeaves(before: unknown, after: unknown): ChangedLeaf[] {
  const [was, is] = [leaves(before), leaves(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((path) => {
    const [from, to] = [was.get(path) ?? null, is.get(path) ?? null];
    return Object.is(from, to) ? [] : [{ path, before: from, after: to }];
  });
}

function leaves(tree: unknown): Map<string, Leaf> {
  const out = new Map<string, Leaf>();
  gather(tree, [], out);
  return out;
}

function gather(value: unknown, path: readonly string[], out: Map<string, Leaf>): void {
  if (typeof value === "object" && value !== null)
    for (const [name, inner] of Object.entries(value)) gather(inner, [...path, name], out);
  else out.set(path.join("."), (value ?? null) as Leaf);
}
