import { Legend } from "@/app/_ui/Legend";

/** What the bars and marks of the ranking mean. */
export function RankingLegend({ firmwareFloor }: { readonly firmwareFloor: number | null }) {
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
        <span>Dotted outline: the cost per hour is not approved, so the money is assumed.</span>
      </div>
      <p>
        Rank span: the places a line takes in nine of ten draws; the tick is the median; dotted when one
        unknown alone moves the line by five places or more.
      </p>
      <p>
        {firmwareFloor === null
          ? "No firmware floor is recorded, so no controller is marked."
          : `Firmware floor: controllers below level ${firmwareFloor} cannot run the new drives as they are (the installation's own setting; common practice, no source).`}
      </p>
    </div>
  );
}
