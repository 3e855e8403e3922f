import "server-only";
import { createHash, randomUUID } from "node:crypto";
import { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import { hashPassword } from "@/lib/access/passwordHash";
import { refusedPassword } from "@/lib/access/refusedPassword";
import { database } from "@/lib/data/client";
import { err, ok, type Result } from "@/lib/kernel/result";

export const firstAdmin = z.strictObject({
  token: z.string().min(1),
  name: z.string().trim().min(1, "Write your name.").max(120),
  email: z.email("Write an e-mail address, such as name@company.example."),
  password: z.string().min(12, "Use at least 12 characters.").max(128, "Use at most 128 characters."),
});

const refused: Refusal = {
  code: "forbidden",
  reason: "This link has been used or is not the newest. Start Ebbline again to have a new one printed.",
};

/**
 * Makes the first administrator of an installation nobody can sign in to, from the one-time link, which is then
 * spent. Where a copy brought people without passwords, the person with that address becomes the administrator.
 */
export async function createFirstAdmin(input: z.output<typeof firstAdmin>): Promise<Result<null, Refusal>> {
  const why = await refusedPassword(input.password, input);
  if (why !== null) return err({ code: "invalid", reason: why, fields: { password: why } });
  const password = await hashPassword(input.password);
  return database().$transaction(async (tx) => {
    const tokenHash = createHash("sha256").update(input.token).digest("hex");
    const spent = await tx.invitation.updateMany({
      where: { tokenHash, usedAt: null },
      data: { usedAt: new Date() },
    });
    if (spent.count === 0 || (await tx.account.count()) > 0) return err(refused);
    const email = input.email.toLowerCase();
    const user = await tx.user.upsert({
      where: { email },
      create: { id: randomUUID(), name: input.name, email, emailVerified: true },
      update: { banned: false },
    });
    await tx.account.create({
      data: { id: randomUUID(), accountId: user.id, providerId: "credential", userId: user.id, password },
    });
    const grant = { userId: user.id, role: "admin" as const, siteId: null };
    if ((await tx.grant.count({ where: grant })) === 0) await tx.grant.create({ data: grant });
    await tx.auditEntry.create({
      data: { userId: user.id, deed: "people:first-admin", entity: "User", entityId: user.id },
    });
    return ok(null);
  });
}
