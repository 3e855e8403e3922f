import type { JudgedCheck } from "@/lib/retrofit/judgeAxis";
import { day } from "@/lib/view/time";

/** A check as it was written down, for reading and for paper. */
export function CheckFacts({ judged: { check, entry, verdict } }: { readonly judged: JudgedCheck }) {
  const unit = check.unit ?? "";
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
