import { Refusal } from "./refusal";

const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  EROFS: "the disk is read-only",
  EACCES: "this account may not write there",
  EPERM: "this account may not write there",
};

/** A failed start in one sentence; what is not expected is shown with its origin. */
export function explain(error: unknown): string {
  if (error instanceof Refusal) return error.message;
  const { code, path } = error as NodeJS.ErrnoException;
  const reason = code === undefined ? undefined : REASONS[code];
  if (reason) return `Ebbline cannot write${path ? ` ${path}` : " its files"}: ${reason}.`;
  const shown = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `Ebbline could not start, for a reason it does not know: ${shown}`;
}
