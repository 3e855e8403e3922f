import "server-only";
import { cache } from "react";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change } from "@/lib/data/change";
import { presentDatabase } from "@/lib/data/client";
import { type Locale, languageOf, numberStyleOf, PLAIN } from "@/lib/kernel/locale";
import { ok, type Result } from "@/lib/kernel/result";
import type { SetReading } from "@/lib/schema/reading";
import { readerOf } from "@/lib/words/wish";

const chosenBy = cache(async (userId: string): Promise<SetReading> => {
  const user = await presentDatabase().user.findUnique({
    where: { id: userId },
    select: { language: true, numbers: true },
  });
  return { language: languageOf(user?.language), numbers: numberStyleOf(user?.numbers) };
});

/** The language and the marks of numbers the person chose; null follows the device and the language. */
export async function readReading(actor: Actor): Promise<SetReading> {
  return chosenBy(actor.userId);
}

/** How a mail to somebody is written, which knows no device: as they chose, else in English. */
export async function readerOfMail(actor: Actor): Promise<Locale> {
  return readerOf(await readReading(actor), PLAIN);
}

/** Keeps the person's own language and marks of numbers. */
export async function setReading(actor: Actor, wanted: SetReading): Promise<Result<null, Refusal>> {
  const { userId } = actor;
  return change(actor, async (tx, record) => {
    const before = await tx.user.findUniqueOrThrow({
      where: { id: userId },
      select: { language: true, numbers: true },
    });
    const { language, numbers } = wanted;
    if (before.language === language && before.numbers === numbers) return ok(null);
    await tx.user.update({ where: { id: userId }, data: wanted });
    record({ deed: "reading:set", entity: "User", entityId: userId, before, after: wanted });
    return ok(null);
  });
}
