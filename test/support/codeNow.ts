import { createHmac } from "node:crypto";

/**
 * The code of this half minute, RFC 6238 with SHA-1 and six digits, from a key in base 32.
 *
 * @param ahead Half minutes from now: a code is good once, and the next one is taken already.
 */
export function codeNow(key: string, ahead = 0): string {
  const bits = [...key].map((letter) =>
    "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".indexOf(letter).toString(2).padStart(5, "0"),
  );
  const bytes =
    bits
      .join("")
      .match(/.{8}/g)
      ?.map((byte) => Number.parseInt(byte, 2)) ?? [];
  const step = Buffer.alloc(8);
  step.writeBigUInt64BE(BigInt(Math.floor(Date.now() / 30_000) + ahead));
  const mac = createHmac("sha1", Buffer.from(bytes)).update(step).digest();
  const at = (mac.at(-1) ?? 0) & 15;
  return String((mac.readUInt32BE(at) & 0x7fff_ffff) % 1_000_000).padStart(6, "0");
}
