import "server-only";
import type { Transaction } from "@/lib/data/change";
import { DIGEST_TRIES } from "@/lib/view/digestTrace";
import { type ReportSlot, slotName } from "@/lib/view/reportSlot";
import type { ReportForm } from "@/prisma/generated/client";

interface Wanted {
  readonly issueId: string;
  readonly userId: string;
  readonly form: ReportForm;
}

/** Asks for one mail with a report, in the transaction that gives it out: one mail, one job. */
export async function queueReportMail(tx: Transaction, wanted: Wanted): Promise<void> {
  const { id } = await tx.reportMail.create({ data: wanted, select: { id: true } });
  await tx.$executeRaw`
    SELECT graphile_worker.add_job('sendReport', json_build_object('mailId', ${id}::text),
      job_key := 'report mail:' || ${id}::text, max_attempts := ${DIGEST_TRIES}::int)`;
}

/** Asks for the making of a report that is due; the same slot again is the same job. */
export async function queueReport(tx: Transaction, slot: ReportSlot): Promise<void> {
  await tx.$executeRaw`
    SELECT graphile_worker.add_job('issueReport', ${JSON.stringify(slot)}::json,
      job_key := 'report:' || ${slotName(slot)}::text, max_attempts := ${DIGEST_TRIES}::int)`;
}
