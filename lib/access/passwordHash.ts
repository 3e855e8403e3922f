import { randomBytes, scrypt, timingSafeEqual } from "node:crypto";
import { verifyPassword } from "better-auth/crypto";

/**
 * How dear a guess is: 32 MiB and three passes. OWASP's Password Storage Cheat Sheet, read at `00111e7`, asks of N 2^15
 * and r 8 two of them at least; newer editions, from memory, three.
 */
const COST = { N: 2 ** 15, r: 8, p: 3 } as const;
const KEY_BYTES = 64;
const START = "scrypt";

type Cost = { readonly N: number; readonly r: number; readonly p: number };

function keyOf(password: string, salt: string, { N, r, p }: Cost): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const settings = { N, r, p, maxmem: 256 * N * r };
    scrypt(password.normalize("NFKC"), salt, KEY_BYTES, settings, (error, key) =>
      error ? reject(error) : resolve(key),
    );
  });
}

/** What is kept of a password: `scrypt$N$r$p$salt$key`, salt and key in hex. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16).toString("hex");
  const key = await keyOf(password, salt, COST);
  return [START, COST.N, COST.r, COST.p, salt, key.toString("hex")].join("$");
}

/** Whether a password is the one kept; those kept before the costs were written beside them are the library's. */
export async function isPassword(hash: string, password: string): Promise<boolean> {
  const [start, N, r, p, salt = "", key = ""] = hash.split("$");
  if (start !== START) return verifyPassword({ hash, password });
  const found = await keyOf(password, salt, { N: Number(N), r: Number(r), p: Number(p) });
  const wanted = Buffer.from(key, "hex");
  return found.length === wanted.length && timingSafeEqual(found, wanted);
}
