import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { StaleMark } from "@/app/_ui/StaleMark";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { evidenceMark } from "@/lib/view/evidence";
import { type AgreedCost, approvalEnded, costDoubt } from "@/lib/view/lineRanking";
import { plainNumber } from "@/lib/view/number";

interface CostCellProps {
  readonly cost: AgreedCost;
  readonly asOf: IsoDate;
}

/** Cost of an hour's stop in EUR; what nobody approved is marked as assumed. */
export function CostCell({ cost, asOf }: CostCellProps) {
  if (cost.perHour === null) return <span className="text-ink-3">not known</span>;
  const doubt = costDoubt(cost, asOf);
  return (
    <span className="inline-grid justify-items-end">
      <span className={doubt === null ? undefined : "assumed px-0.5"}>{plainNumber(cost.perHour)}</span>
      {doubt === null ? (
        <EvidenceMark {...evidenceMark(cost.evidence)} />
      ) : (
        <span className="text-ink-2 text-xs">
          {approvalEnded(cost, asOf) ? <StaleMark text="Expired" /> : null} {doubt}
        </span>
      )}
    </span>
  );
}
