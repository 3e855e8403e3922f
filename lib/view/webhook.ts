import { SUBJECTS, type SubjectKey, TRIAL } from "@/lib/schema/webhook";

/** The words of one kind of change. */
export function subjectWord(subject: string): string {
  if (subject === TRIAL) return "A trial, nothing changed";
  return SUBJECTS[subject as SubjectKey]?.label ?? subject;
}

/** What a system is told of, as one line. */
export function subjectWords(subjects: readonly string[]): string {
  return subjects.map(subjectWord).join("; ");
}

/** Whether a webhook is in use, and why not. */
export function hookState({
  disabledAt,
  disabledReason,
}: {
  readonly disabledAt: string | null;
  readonly disabledReason: string | null;
}): string {
  return disabledAt === null ? "In use" : `Out of use. ${disabledReason ?? ""}`.trim();
}

const STATES = { waiting: "waits", delivered: "arrived", given_up: "given up" } as const;

/** How far a message is: `waits after 2 tries`. */
export function deliveryState({
  state,
  tries,
}: {
  readonly state: keyof typeof STATES;
  readonly tries: number;
}): string {
  const word = STATES[state];
  if (tries === 0) return word;
  return `${word} after ${tries} ${tries === 1 ? "try" : "tries"}`;
}
