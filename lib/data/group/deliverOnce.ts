import "server-only";
import type { Deliver, ReadyMail } from "@/lib/data/group/readyMail";

/** What is kept of a try to send a mail. */
export interface Tried {
  readonly sentAt?: Date;
  readonly file?: string | null;
  readonly problem: string | null;
  readonly tries: { readonly increment: 1 };
}

/**
 * Sends a mail and keeps how it went.
 *
 * @throws What the delivery threw, after keeping it, so that the queue tries again.
 */
export async function deliverOnce(
  mail: ReadyMail,
  deliver: Deliver,
  keep: (tried: Tried) => Promise<unknown>,
): Promise<void> {
  try {
    const { file } = await deliver(mail);
    await keep({ sentAt: new Date(), file, problem: null, tries: { increment: 1 } });
  } catch (error) {
    const problem = error instanceof Error ? error.message : String(error);
    await keep({ problem, tries: { increment: 1 } });
    throw error;
  }
}
