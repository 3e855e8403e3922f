import { AsOfLink } from "@/app/_ui/AsOfLink";
import { VerdictMark } from "@/app/(workspace)/_components/VerdictMark";
import type { ScopeBlocker } from "@/lib/retrofit/scope/controllerScope";
import { count } from "@/lib/view/number";

interface BlockerListProps {
  readonly blockers: readonly ScopeBlocker[];
  /** Controllers that were held against the rules. */
  readonly controllers: number;
}

/** What stands in the way, worst first, each with its way out. */
export function BlockerList({ blockers, controllers }: BlockerListProps) {
  return (
    <>
      <p className="measure mb-3">
        {`${count(controllers, "controller")} held against the `}
        <AsOfLink href="/rules">compatibility rules</AsOfLink> in force; what nobody has read is unknown and
        never clear.
      </p>
      {blockers.length === 0 ? <p>Nothing on record stands in the way.</p> : null}
      <ul className="grid gap-2" aria-label="In the way">
        {blockers.map(({ name, state, words, unblocks, where, rule }) => (
          <li key={`${name} ${state} ${words}`} className="measure">
            <VerdictMark state={state} /> <strong>{name}</strong>
            {rule === null ? null : <span className="text-ink-2"> ({rule})</span>}: {words}
            {unblocks === null ? null : <span className="block">Way out: {unblocks}</span>}
            {where.length === 0 ? null : <span className="block text-ink-2 text-sm">{where.join(", ")}</span>}
          </li>
        ))}
      </ul>
    </>
  );
}
