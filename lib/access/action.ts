import "server-only";
import type { z } from "zod";
import { type Actor, currentActor } from "@/lib/access/actor";
import { type Deed, maySomewhere } from "@/lib/access/policy";
import { err, type Result } from "@/lib/kernel/result";

/** Why a change was not made: what the person reads, and which fields it is about. */
export interface Refusal {
  readonly code: "signedOut" | "forbidden" | "invalid" | "missing" | "conflict" | "impossible";
  readonly reason: string;
  /** Field name to what is wrong with it. */
  readonly fields?: Readonly<Record<string, string>>;
}

interface Recipe<S extends z.ZodType, T> {
  readonly needs: Deed;
  readonly input: S;
  readonly run: (actor: Actor, input: z.output<S>) => Promise<Result<T, Refusal>>;
}

/**
 * A change a page may ask for: signed in, then permitted somewhere, then valid, then run.
 *
 * Where the deed is allowed is decided again inside the query, by the rows it touches.
 */
export function action<S extends z.ZodType, T>({ needs, input, run }: Recipe<S, T>) {
  return async (raw: z.input<S>): Promise<Result<T, Refusal>> => {
    const actor = await currentActor();
    if (!actor)
      return err({ code: "signedOut", reason: "You are signed out. Sign in again; nothing was changed." });
    if (!maySomewhere(actor.grants, needs))
      return err({
        code: "forbidden",
        reason: "Your role does not allow this. Ask an administrator of Ebbline.",
      });
    const read = input.safeParse(raw);
    if (!read.success) return err(invalid(read.error));
    return run(actor, read.data);
  };
}

function invalid(error: z.ZodError): Refusal {
  const fields: Record<string, string> = {};
  for (const { path, message } of error.issues) fields[path.join(".")] ??= message;
  return { code: "invalid", reason: "Some entries cannot be used. Nothing was changed.", fields };
}
