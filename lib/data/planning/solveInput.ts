import "server-only";
import { createHash } from "node:crypto";
import { promisify } from "node:util";
import { gunzip, gzip } from "node:zlib";
import type { Transaction } from "@/lib/data/change";
import type { PlanGroup } from "@/lib/portfolio/planWorth";

/** What a search is made from, as text that is the same for the same. */
export interface SolveInput {
  readonly text: string;
  /** SHA-256 of the text, hex. */
  readonly hash: string;
}

/** The engine that evaluated the group, and all a search reads. */
export function solveInputOf(engine: string, group: PlanGroup): SolveInput {
  const text = JSON.stringify([engine, group]);
  return { text, hash: createHash("sha256").update(text).digest("hex") };
}

/** Packed as it is kept; done before the change begins, so that no lock waits for it. */
export async function packed({ text }: SolveInput): Promise<Uint8Array<ArrayBuffer>> {
  return Uint8Array.from(await promisify(gzip)(text));
}

/** Keeps an input once, however many searches are made from it. */
export async function keepSolveInput(
  tx: Transaction,
  row: { readonly hash: string; readonly packed: Uint8Array<ArrayBuffer> },
): Promise<void> {
  await tx.solveInput.createMany({ data: [row], skipDuplicates: true });
}

/** The group a search was made from, as it was then. */
export async function unpackedGroup(bytes: Uint8Array): Promise<PlanGroup> {
  const [, group] = JSON.parse((await promisify(gunzip)(bytes)).toString("utf8")) as [string, PlanGroup];
  return group;
}
