import { hashPassword as hashByLibrary } from "better-auth/crypto";
import { expect, test } from "vitest";
import { hashPassword, isPassword } from "@/lib/access/passwordHash";

test("what is kept says what a guess costs: at least what the OWASP Password Storage Cheat Sheet asks of scrypt", async () => {
  const kept = await hashPassword("seven green herons");
  const [name, N, r, p, salt, key] = kept.split("$");
  expect([name, salt?.length, key?.length]).toEqual(["scrypt", 32, 128]);
  // Read at 00111e7: N 2^15 with r 8 asks of p 2 at least.
  expect([Number(N) >= 2 ** 15, Number(r) >= 8, Number(p) >= 2]).toEqual([true, true, true]);
  expect(await hashPassword("seven green herons")).not.toBe(kept);
});

test("the right password is known again, whoever kept it, and no other is", async () => {
  for (const kept of [await hashPassword("seven green herons"), await hashByLibrary("seven green herons")]) {
    expect(await isPassword(kept, "seven green herons")).toBe(true);
    expect(await isPassword(kept, "seven green heron")).toBe(false);
  }
});
