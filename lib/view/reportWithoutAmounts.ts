import { resultWithoutAmounts } from "@/lib/view/lineWithoutAmounts";
import type { ReportInput } from "@/lib/view/report";
import { withoutAmounts } from "@/lib/view/withoutAmounts";

/**
 * What a report is made of as it leaves for somebody to whom the amounts of some sites are not shown: lines and projects
 * there as if they had no money, and no sum over all.
 *
 * @param isShown Whether amounts of the site of this id are shown.
 */
export function reportWithoutAmounts(input: ReportInput, isShown: (siteId: string) => boolean): ReportInput {
  const hidden = input.sites.filter(({ id }) => !isShown(id));
  if (hidden.length === 0) return input;
  const codes = new Set(hidden.map(({ code }) => code));
  const lineCodes = new Set(input.lines.flatMap(({ code, siteId }) => (isShown(siteId) ? [] : [code])));
  return {
    ...input,
    ...{ hidesAmounts: true, drawnTotal: null },
    drawnSites: Object.fromEntries(Object.entries(input.drawnSites).filter(([code]) => !codes.has(code))),
    lines: input.lines.map((line) =>
      lineCodes.has(line.code) ? { ...line, cost: null, result: resultWithoutAmounts(line.result) } : line,
    ),
    projects: input.projects.map((one) => (codes.has(one.siteCode) ? withoutAmounts(one) : one)),
    acceptances: input.acceptances.map((one) => (lineCodes.has(one.lineCode) ? { ...one, loss: null } : one)),
    plans: input.plans.map((plan) => ({ ...plan, totals: null })),
  };
}
