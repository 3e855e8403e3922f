/** A node of the syntax tree; each kind has fields of its own. */
export interface Node {
  readonly type: string;
  readonly [field: string]: unknown;
}

/** Visits a node and all below it. */
export function walk(node: Node, visit: (node: Node) => void): void {
  visit(node);
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) walk(child, visit);
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && typeof (value as Node).type === "string";
}
