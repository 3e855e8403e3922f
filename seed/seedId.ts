import { createHash } from "node:crypto";

/**
 * An id that follows from what a row is called, so that the same seed writes the same rows.
 *
 * Name-based after RFC 9562, section 5.8 (a version 8 UUID from SHA-256).
 */
export function seedId(table: string, key: string): string {
  const hex = createHash("sha256").update(`ebbline/${table}/${key}`).digest("hex");
  const variant = ((Number.parseInt(hex.slice(16, 18), 16) & 0x3f) | 0x80).toString(16);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(18, 20)}-${hex.slice(20, 32)}`;
}
