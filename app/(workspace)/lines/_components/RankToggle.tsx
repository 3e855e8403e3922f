"use client";

import { useSearchParams } from "next/navigation";
import { Anchor } from "@/app/_ui/Anchor";
import type { RankedBy } from "@/lib/view/lineTotals";

interface RankToggleProps {
  readonly by: RankedBy;
  /** Table whose own sorting gives way to the rank that is chosen. */
  readonly table: string;
}

const CHOICES = [
  { by: "loss", text: "By money" },
  { by: "score", text: "By score" },
] as const;

/** Chooses which rank leads; the choice stands in the address with all else that does. */
export function RankToggle({ by, table }: RankToggleProps) {
  const params = useSearchParams();
  const hrefOf = (wanted: RankedBy) => {
    const next = new URLSearchParams(params);
    next.delete(`${table}.sort`);
    next.set("by", wanted);
    return `/lines?${next}`;
  };
  return (
    <nav aria-label="Leading rank" className="flex">
      {CHOICES.map((choice) => (
        <Anchor
          key={choice.by}
          href={hrefOf(choice.by)}
          replace
          scroll={false}
          prefetch={false}
          className="button"
          data-kind={choice.by === by ? "primary" : "plain"}
          aria-current={choice.by === by ? "true" : undefined}
        >
          {choice.text}
        </Anchor>
      ))}
    </nav>
  );
}
