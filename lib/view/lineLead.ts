import { percent } from "@/lib/view/chance";
import { money, moneyRange } from "@/lib/view/format";
import type { LineDossier } from "@/lib/view/lineDossier";
import { stageView } from "@/lib/view/stage";

/** The line in one sentence: what its stops cost, which part drives that, and how that part can be had. */
export function leadOfDossier({ result, drivers, site, showsAmounts }: LineDossier): string {
  const [first] = drivers;
  const where = `At ${site.name}.`;
  if (!first) return `${where} No items are recorded on this line.`;
  const stage = stageView(first.pool?.stage ?? "undated").name.toLowerCase();
  const { stopLoss } = result;
  const score = Math.round(result.score);
  if (!showsAmounts) return `${where} Score ${score} of 100; ${first.label} (${stage}) adds most to it.`;
  if (stopLoss === null || stopLoss.mean === 0 || first.baseLoss === null || first.shortageLoss === null)
    return `${where} Score ${score} of 100; ${first.label} (${stage}) adds most to it. No cost per hour gives it money yet.`;
  const share = Math.min(1, (first.baseLoss + first.shortageLoss) / stopLoss.mean);
  return `${where} Stops cost about ${money(stopLoss.mean)} a year (${moneyRange(stopLoss)}); ${percent(share)} of it comes from ${first.label}, supply stage ${stage}.`;
}
