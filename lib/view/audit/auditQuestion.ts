import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { AUDIT_THINGS, type AuditQuestion } from "@/lib/view/audit/auditEntry";

const words = z.string().max(200).optional().catch(undefined);
const day = z.string().refine(isIsoDate).optional().catch(undefined);

const address = z.object({
  ...{ of: z.enum(AUDIT_THINGS).optional().catch(undefined), id: z.uuid().optional().catch(undefined) },
  ...{ who: words, area: words, from: day, until: day },
  after: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}T[\d:.]+Z_[0-9a-f-]{36}$/)
    .optional()
    .catch(undefined),
});

/** What an address asks of the audit; what it says wrongly narrows nothing. */
export function readAuditQuestion(params: Readonly<Record<string, unknown>>): AuditQuestion {
  const { of, id, ...rest } = address.parse(params);
  return { ...rest, thing: of && id ? { kind: of, id } : undefined };
}
