import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { loadBenefit } from "@/lib/data/closing/loadBenefit";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type BenefitFigures, type BenefitFile, benefitFigures } from "@/lib/view/benefit";

/** What a project brought, as known on a day; null when there is none or the actor may not see it. */
export async function readBenefit(
  actor: Actor,
  { code, asOf }: { readonly code: string; readonly asOf: IsoDate },
): Promise<BenefitFile | null> {
  const found = await database().project.findFirst({
    where: { code, ...atSites(actor, "read") },
    include: { closing: true, site: { select: { timeZone: true } } },
  });
  if (!found) return null;
  const { closing, site, ...project } = found;
  const { id, name, siteId, status, currency, version } = project;
  const closedOn = closing?.closedOn.toISOString().slice(0, 10) ?? null;
  const facts = await loadBenefit(database(), project, { closedOn, asOf });
  return {
    ...{ id, code, name, siteId, status, currency, version, timeZone: site.timeZone },
    closing: closing && {
      ...{ closedOn: closedOn ?? "", checkedBy: closing.checkedBy, conclusion: closing.conclusion },
      checkOn: closing.checkOn.toISOString().slice(0, 10),
      checkedOn: closing.checkedOn?.toISOString().slice(0, 10) ?? null,
    },
    // What was checked is shown as it stood then.
    figures:
      closing?.checked != null
        ? (closing.checked as unknown as BenefitFigures)
        : facts && benefitFigures(facts),
  };
}
