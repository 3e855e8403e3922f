import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Legend } from "@/app/_ui/Legend";

/** What the bars and marks of the ranking mean. */
export function RankingLegend() {
  return (
    <div className="mt-3 grid gap-2 text-ink-2 text-sm">
      <div className="flex flex-wrap items-baseline gap-x-6 gap-y-1">
        <span>Stop loss:</span>
        <Legend
          items={[
            { label: "base part, stops with a spare at hand", look: "solid" },
            { label: "shortage part, stops that find no spare", look: "hatch" },
          ]}
        />
        <span>Whisker: from the 5 % to the 95 % point of the draws.</span>
      </div>
      <div className="flex flex-wrap items-baseline gap-x-6 gap-y-1">
        <span>Score:</span>
        <Legend
          items={[
            { label: "supply stage", look: "solid" },
            { label: "spares", look: "hatch" },
            { label: "time to restore", look: "pale" },
          ]}
        />
        <span>
          Dotted outline: the cost per hour is not approved, or its approval has run out, so the money is
          assumed.
        </span>
      </div>
      <p>
        S or L in a double frame beside a line: one of its safety or legal dates lies within 24 months. It
        binds whatever the line loses and no rank weighs it.
      </p>
      <p>
        Rank span: the places a line takes in nine of ten draws; the tick is the median; dotted when one
        unknown alone moves the line by five places or more.
      </p>
      <p>
        Firmware floor: controllers that do not run the new drives as they are, by the{" "}
        <AsOfLink href="/rules">compatibility rules</AsOfLink> in force. Without a rule none is marked.
      </p>
    </div>
  );
}
