import "server-only";
import { createHash } from "node:crypto";
import { gunzipSync, gzipSync } from "node:zlib";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, GroupResult } from "@/lib/risk/evaluation";
import { canonicalJson } from "@/lib/risk/moved/canonicalJson";
import type { SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import { completed } from "@/lib/risk/readAssumptions";

/** The input as it is stored: JSON with sorted keys, gzip. */
export function freezeInput(input: GroupInput): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(gzipSync(canonicalJson(input)));
}

/**
 * What was stored, as the evaluation takes it; the same bytes give the same values in the same order.
 *
 * An assumption the product did not have then stands as likely: nothing in those bytes asks for it, but a later
 * snapshot beside them may.
 */
export function thaw(row: { readonly input: Uint8Array; readonly assumptions: unknown }): SnapshotInput {
  return {
    input: JSON.parse(gunzipSync(row.input).toString("utf8")) as GroupInput,
    assumptions: completed(JSON.parse(canonicalJson(row.assumptions))) as Assumptions,
  };
}

/** SHA-256 of the result's bytes, hex. */
export function resultHash(result: GroupResult): string {
  return createHash("sha256").update(canonicalJson(result)).digest("hex");
}
