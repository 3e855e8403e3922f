import type { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import { database } from "@/lib/data/client";
import type { Result } from "@/lib/kernel/result";
import { moduleOf } from "@/test/support/access/endpoints";
import { inRequest } from "@/test/support/access/inRequest";
import type { Verdict, Visitor } from "@/test/support/access/people";
import type { ActionRule } from "@/test/support/access/rules";
import { type Known, sampleInput } from "@/test/support/access/sampleInput";

type Action = ((raw: unknown) => Promise<Result<unknown, Refusal>>) & { readonly input: z.ZodType };

const root = `${import.meta.dirname}/../../..`;

/** An action by the name the table has for it, with the input to try it with. */
export async function openAction(name: string, [, , fields = {}]: ActionRule, known: Known) {
  const [folder = "", called = ""] = name.split("#");
  const module = await import(/* @vite-ignore */ `${root}/${moduleOf(folder, "actions.ts")}`);
  const act = module[called] as Action;
  const named = Object.entries(fields).map(([field, thing]) => {
    if (!(thing in known)) throw new Error(`${name}: nothing is known as ${thing}`);
    return [field, known[thing]];
  });
  return { act, input: sampleInput(act.input, { ...known, ...Object.fromEntries(named) }) };
}

const HELD = "held back by the test";

/**
 * Lets nothing that is audited, and no file, be written: at its end the transaction fails, so that each who may finds
 * everything as the one before.
 */
export async function holdWrites(): Promise<void> {
  const db = database();
  await db.$executeRaw`CREATE FUNCTION held_back() RETURNS trigger LANGUAGE plpgsql AS
    $$ BEGIN RAISE EXCEPTION 'held back by the test'; END $$`;
  await db.$executeRaw`CREATE CONSTRAINT TRIGGER held_back AFTER INSERT ON "AuditEntry"
    DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION held_back()`;
  await db.$executeRaw`CREATE CONSTRAINT TRIGGER held_back AFTER DELETE ON "ImportBatch"
    DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION held_back()`;
}

const VERDICTS: Readonly<Record<Refusal["code"], Verdict>> = {
  ...{ signedOut: "sign in", forbidden: "not there", missing: "not there" },
  // Who is told what is wrong, or what stands in the way, has come to the thing.
  ...{ invalid: "let in", conflict: "let in", impossible: "let in" },
};

/** What somebody finds who calls an action. */
export async function tryAction(
  visitor: Visitor,
  { act, input }: Awaited<ReturnType<typeof openAction>>,
): Promise<Verdict> {
  try {
    const answer = await inRequest(visitor.cookie, () => act(input));
    return answer.ok ? "let in" : VERDICTS[answer.error.code];
  } catch (error) {
    if (String(error).includes(HELD)) return "let in";
    throw error;
  }
}
