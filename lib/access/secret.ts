import { createHash, randomBytes } from "node:crypto";

/** A secret nobody guesses, and what is kept of it. */
export function newSecret(start = ""): { readonly token: string; readonly tokenHash: string } {
  const token = start + randomBytes(32).toString("base64url");
  return { token, tokenHash: hashOf(token) };
}

/** SHA-256 of a secret, hex: a row is found by it, so the time of the search tells nothing of the secret. */
export function hashOf(secret: string): string {
  return createHash("sha256").update(secret).digest("hex");
}
