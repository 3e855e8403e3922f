import "server-only";
import type { Transaction } from "@/lib/data/change";
import { DIGEST_TRIES } from "@/lib/view/digestTrace";

/** Puts the sending of one mail into the queue, in the transaction that asks for it: one mail, one job. */
export async function queueDigest(tx: Transaction, mailId: string): Promise<void> {
  await tx.$executeRaw`
    SELECT graphile_worker.add_job('sendDigest', json_build_object('mailId', ${mailId}::text),
      job_key := 'digest:' || ${mailId}::text, max_attempts := ${DIGEST_TRIES}::int)`;
}
