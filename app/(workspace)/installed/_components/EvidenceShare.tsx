import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { evidenceMark } from "@/lib/view/evidence";
import type { EvidenceCounts } from "@/lib/view/installed";
import { plainNumber } from "@/lib/view/number";

const GRADES = ["measured", "documented", "inferred", "assumed"] as const;

/** How many places are known how well; a grade nothing has is left out. */
export function EvidenceShare({ counts }: { readonly counts: EvidenceCounts }) {
  return (
    <span className="inline-flex gap-2.5">
      {GRADES.filter((grade) => counts[grade] > 0).map((grade) => (
        <span key={grade} className="whitespace-nowrap">
          {plainNumber(counts[grade])} <EvidenceMark {...evidenceMark(grade)} />
        </span>
      ))}
    </span>
  );
}
