import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { isPassword } from "@/lib/access/passwordHash";
import { countWrong, forgetWrong, isResting } from "@/lib/access/signInPause";
import { presentDatabase } from "@/lib/data/client";

const WRONG = "The password is not right. Nothing was changed.";
const wrong: Refusal = { code: "invalid", reason: WRONG, fields: { password: WRONG } };
const resting: Refusal = { code: "impossible", reason: "Too many wrong passwords. Wait 15 minutes." };

/**
 * Why somebody may not go on who is to say their own password; null when it is right, or when they have none because
 * they come by the company's sign-in. Wrong ones count as at the door.
 */
export async function refusedOwnPassword(
  { userId, email }: Pick<Actor, "userId" | "email">,
  password: string,
): Promise<Refusal | null> {
  const account = await presentDatabase().account.findFirst({
    where: { userId, providerId: "credential" },
    select: { password: true },
  });
  if (!account?.password) return null;
  if (await isResting(email)) return resting;
  if (await isPassword(account.password, password)) {
    await forgetWrong(email);
    return null;
  }
  await countWrong(email);
  return wrong;
}
