import { SpanBar } from "@/app/_ui/SpanBar";
import { placeRange, type RankedPlace } from "@/lib/view/linePlace";

interface PlaceCellProps {
  readonly place: Pick<RankedPlace, "span" | "fragile"> | null;
  /** Places there are: end of the scale. */
  readonly lines: number;
}

/** The places a line takes in nine of ten draws, in figures and as a bar; dotted when one unknown alone moves it far. */
export function PlaceCell({ place, lines }: PlaceCellProps) {
  if (place === null) return <span className="text-ink-3">not known</span>;
  const { low, mid, high } = place.span;
  const range = placeRange(place.span);
  const text = `places ${range} of ${lines} in nine of ten draws, median ${mid}${place.fragile ? ", fragile" : ""}`;
  return (
    <span className="grid grid-cols-[2.75rem_6rem] items-center gap-1">
      <span className="whitespace-nowrap">{range}</span>
      <SpanBar low={low} mean={mid} high={high} min={1} max={lines} text={text} assumed={place.fragile} />
    </span>
  );
}
