import type { IsoDate } from "@/lib/kernel/isoDate";
import { count } from "@/lib/view/number";
import { day, moment } from "@/lib/view/time";

/** After so many tries a mail is given up. */
export const DIGEST_TRIES = 10;

interface Trace {
  readonly askedAt: string;
  readonly sentAt: string | null;
  readonly file: string | null;
  readonly tries: number;
  readonly problem: string | null;
}

/** What became of one mail. */
export function digestTraceWords({ askedAt, sentAt, file, tries, problem }: Trace, zone: string): string {
  const asked = `Asked for ${moment(askedAt, zone)}`;
  if (file !== null) return `${asked}: written to ${file}.`;
  if (sentAt !== null) return `${asked}: sent ${moment(sentAt, zone)}.`;
  if (problem === null) return `${asked}: waits to be sent.`;
  const next = tries < DIGEST_TRIES ? "and tried again" : "and given up";
  return `${asked}: not sent after ${count(tries, "try", "tries")}, ${next}. ${problem}`;
}

interface State {
  readonly folder: string | null;
  readonly standsAt: IsoDate | null;
}

/** Where mails go and when, in words. */
export function digestStateWords({ folder, standsAt }: State): string {
  const way =
    folder === null
      ? "Mails go to the address you sign in with."
      : `No mail server is set, so each mail is written to a file in ${folder} instead of being sent.`;
  return standsAt === null
    ? way
    : `${way} This installation stands at ${day(standsAt)}, so none goes by itself; ask for one here.`;
}
