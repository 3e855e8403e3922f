import { HOARD_INDEX } from "@/lib/view/sparesShares";

/** What the two bars and the letter mean. */
export function ShareKey() {
  return (
    <ul className="mb-3 flex flex-wrap gap-x-5 gap-y-1 text-ink-2 text-sm">
      <li className="inline-flex items-center gap-2">
        <span className="inline-block h-2 w-6 bg-[var(--money-4)]" aria-hidden="true" />
        share of the usable pieces
      </li>
      <li className="inline-flex items-center gap-2">
        <span className="inline-block h-2 w-6 border border-ink-2" aria-hidden="true" />
        share of the expected removals
      </li>
      <li>
        <b>H</b> holds more than {HOARD_INDEX} times its share of the demand
      </li>
    </ul>
  );
}
