import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { change } from "@/lib/data/change";
import { composeReport, freezeReport, makeReport } from "@/lib/data/group/freezeReport";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { IssueReport } from "@/lib/schema/report";
import { plainly } from "@/lib/words/reading";

const missing: Refusal = {
  code: "missing",
  reason: "There is no such report that you may give out.",
};
const moved: Refusal = {
  code: "conflict",
  reason: "The records changed since you opened the page. Look at the report again, then give it out.",
};

/** Whether the actor may give out the reports of a site, or (null) of the whole group. */
export function mayIssue(actor: Actor, siteId: string | null): boolean {
  const deed = "report:issue";
  return siteId === null ? scopeOf(actor.grants, deed) === "all" : mayAt(actor.grants, deed, siteId);
}

/** Gives a report out as it reads now: its document and files are kept for good, and mailed to who asked for them. */
export async function issueReport(
  actor: Actor,
  { dataVersion, ...asked }: IssueReport,
): Promise<Result<{ readonly issueId: string }, Refusal>> {
  if (!mayIssue(actor, asked.siteId)) return err(missing);
  // The document is kept for every reader, its files are made for who gives it out.
  const document = await plainly(() => composeReport(actor, asked));
  if (document === null) return err(missing);
  if (document.basis.dataVersion !== dataVersion) return err(moved);
  const made = await makeReport(asked, document);
  return change(actor, async (tx, record) => {
    const issueId = await freezeReport(tx, made, { issuedBy: actor.name, slot: null });
    const { kind, siteId } = asked;
    record({
      ...{ deed: "report:issue", entity: "ReportIssue", entityId: issueId, siteId },
      after: { kind, period: document.period, dataVersion },
    });
    return ok({ issueId });
  });
}
