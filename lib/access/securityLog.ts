/** A line of the log about safety: what was refused to whom. */
export interface SecurityEvent {
  /** Such as "action refused". */
  readonly event: string;
  /** Id of the person; null is nobody who is known. */
  readonly userId: string | null;
  /** What was asked for: a right, a method with its path. */
  readonly what: string;
  readonly why: string;
}

/**
 * Writes one line of JSON to the error stream, with its instant in UTC. What comes from outside stays within its quotes,
 * so that nobody writes a second line.
 */
export function noteSecurity(event: SecurityEvent): void {
  process.stderr.write(`${JSON.stringify({ at: new Date().toISOString(), ...event })}\n`);
}

/** Writes what went wrong as one line, whatever line breaks the words of it have. */
export function noteTrouble(where: string, error: unknown): void {
  const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`${JSON.stringify({ at: new Date().toISOString(), event: "trouble", where, why })}\n`);
}
