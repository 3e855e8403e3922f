import "server-only";
import type { z } from "zod";
import { type Actor, currentActor } from "@/lib/access/actor";
import { sentFromThePast } from "@/lib/access/lookingBack";
import { type Deed, maySomewhere, projectsOf } from "@/lib/access/policy";
import { noteSecurity, noteTrouble } from "@/lib/access/securityLog";
import { TROUBLES, troubleOf } from "@/lib/access/trouble";
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
  /** Contractors may ask too; `run` finds whether the row is of their project. */
  readonly inProject?: boolean;
}

/**
 * A change a page may ask for: signed in, then permitted somewhere, then valid, then run.
 *
 * Where the deed is allowed is decided again inside the query, by the rows it touches.
 */
export function action<S extends z.ZodType, T>({ needs, input, run, inProject = false }: Recipe<S, T>) {
  const act = async (raw: z.input<S>): Promise<Result<T, Refusal>> => {
    const actor = await currentActor();
    if (!actor)
      return err({ code: "signedOut", reason: "You are signed out. Sign in again; nothing was changed." });
    if (await sentFromThePast()) return err(PAST);
    const { grants } = actor;
    if (!maySomewhere(grants, needs) && !(inProject && projectsOf(grants, needs).length > 0)) {
      noteSecurity({ event: "action refused", userId: actor.userId, what: needs, why: "role" });
      return err(FORBIDDEN);
    }
    const read = input.safeParse(raw);
    if (!read.success) return err(invalid(read.error));
    return noted(await run(actor, read.data), actor, needs);
  };
  const inWords = (raw: z.input<S>) => act(raw).catch(refusalOf);
  // What is asked for stands beside the function, where a test reads it; only the function itself can be called.
  return Object.assign(inWords, { input });
}

/** Notes a refusal where a right somewhere does not reach this far: an amount, a site, a rank. */
function noted<T>(done: Result<T, Refusal>, { userId }: Actor, what: Deed): Result<T, Refusal> {
  if (!done.ok && done.error.code === "forbidden")
    noteSecurity({ event: "action refused", userId, what, why: done.error.reason });
  return done;
}

const FORBIDDEN: Refusal = {
  code: "forbidden",
  reason: "Your role does not allow this. Ask an administrator of Ebbline.",
};

const PAST: Refusal = {
  code: "impossible",
  reason:
    "This page shows what was known earlier. Nothing was changed. Go back to today to change something.",
};

/** A database that is away, or a full disk, is told in words where the person stands; all else is not caught. */
function refusalOf(error: unknown): Result<never, Refusal> {
  const trouble = troubleOf(error);
  if (trouble === null) throw error;
  noteTrouble("action", error);
  return err({ code: "impossible", reason: TROUBLES[trouble] });
}

function invalid(error: z.ZodError): Refusal {
  const fields: Record<string, string> = {};
  for (const { path, message } of error.issues) fields[path.join(".")] ??= message;
  return { code: "invalid", reason: "Some entries cannot be used. Nothing was changed.", fields };
}
