import { Delta } from "@/app/_ui/Delta";
import type { ShownMove } from "@/lib/view/reviewWords";

/** A figure before and now, and what lies between. */
export function MovedFigure({ figure: { before, after, kind, change } }: { readonly figure: ShownMove }) {
  return (
    <td data-align="end">
      {`${before} → ${after}`}
      <span className="block text-sm">
        <Delta kind={kind} text={change} />
      </span>
    </td>
  );
}
