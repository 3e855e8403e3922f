import type { JudgedCheck } from "@/lib/retrofit/judgeAxis";
import { checkUnit } from "@/lib/view/axisRule";
import { day } from "@/lib/view/time";

interface CheckFactsProps {
  readonly judged: JudgedCheck;
  readonly travelUnit: string | null;
}

/** A check as it was written down, for reading. */
export function CheckFacts({ judged, travelUnit }: CheckFactsProps) {
  const { check, entry, verdict } = judged;
  const unit = checkUnit(check, travelUnit) ?? "";
  const names = [entry.by, entry.witness].filter((name) => name !== "").join(" and ");
  const facts = [
    entry.asFound === null ? "" : `before ${entry.asFound} ${unit}`,
    entry.limit === null ? "" : `limit ${entry.limit} ${unit}`,
    entry.asLeft.length === 0 ? "" : `after ${entry.asLeft.join(", ")} ${unit}`,
    entry.instrument === "" ? "" : `with ${entry.instrument}`,
    names === "" ? "" : `by ${names}`,
    entry.on === null ? "" : day(entry.on),
  ].filter((fact) => fact !== "");
  return (
    <p className="measure tabular-nums">
      {verdict.reason}
      {facts.length === 0 ? "" : ` (${facts.join("; ")})`}
    </p>
  );
}
