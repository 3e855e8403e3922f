import type { Method, Operation } from "@/lib/interface/operation";
import { READS } from "@/lib/interface/operations/reads";
import { WRITES } from "@/lib/interface/operations/writes";

/** Everything the interface does, reads first. */
export const OPERATIONS: readonly Operation[] = [...READS, ...WRITES];

/** Where the interface lies. */
export const ROOT = "/api/v1";

interface Found {
  readonly operation: Operation;
  readonly id: string;
}

/** The operation of a request; else the methods the path has, which are none where there is no such path. */
export function findOperation(
  method: string,
  path: readonly string[],
): Found | { readonly allowed: readonly Method[] } {
  const at = OPERATIONS.filter((operation) => matches(operation, path));
  const operation = at.find((one) => one.method === method);
  if (!operation) return { allowed: at.map((one) => one.method) };
  const place = partsOf(operation).indexOf("{id}");
  return { operation, id: path[place] ?? "" };
}

const partsOf = ({ path }: Operation) => path.slice(1).split("/");

function matches(operation: Operation, path: readonly string[]): boolean {
  const parts = partsOf(operation);
  return parts.length === path.length && parts.every((part, at) => part === "{id}" || part === path[at]);
}
