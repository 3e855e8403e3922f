import type { Refusal } from "@/lib/access/action";
import { err, type Result } from "@/lib/kernel/result";

/** The answer to a change, or a refusal that says the server was not reached; what was typed stays in the form. */
export function orOffline<T>(asked: Promise<Result<T, Refusal>>): Promise<Result<T, Refusal>> {
  return asked.catch(() =>
    err({
      code: "conflict",
      reason:
        "The server was not reached. What you typed is kept; send it again when the connection is back.",
    }),
  );
}
