import "server-only";
import type { z } from "zod";
import { type Actor, currentActor } from "@/lib/access/actor";
import { sentFromThePast } from "@/lib/access/lookingBack";
import { type Deed, maySomewhere, projectsOf } from "@/lib/access/policy";
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
    if (!maySomewhere(grants, needs) && !(inProject && projectsOf(grants, needs).length > 0))
      return err({
        code: "forbidden",
        reason: "Your role does not allow this. Ask an administrator of Ebbline.",
      });
    const read = input.safeParse(raw);
    if (!read.success) return err(invalid(read.error));
    return run(actor, read.data);
  };
  const inWords = (raw: z.input<S>) => act(raw).catch(refusalOf);
  // What is asked for stands beside the function, where a test reads it; only the function itself can be called.
  return Object.assign(inWords, { input });
}

const PAST: Refusal = {
  code: "impossible",
  reason:
    "This page shows what was known earlier. Nothing was changed. Go back to today to change something.",
};

/** A database that is away, or a full disk, is told in words where the person stands; all else is not caught. */
function refusalOf(error: unknown): Result<never, Refusal> {
  const trouble = troubleOf(error);
  if (trouble === null) throw error;
  process.stderr.write(`Action: ${error instanceof Error ? error.message : String(error)}\n`);
  return err({ code: "impossible", reason: TROUBLES[trouble] });
}

function invalid(error: z.ZodError): Refusal {
  const fields: Record<string, string> = {};
  for (const { path, message } of error.issues) fields[path.join(".")] ??= message;
  return { code: "invalid", reason: "Some entries cannot be used. Nothing was changed.", fields };
}
