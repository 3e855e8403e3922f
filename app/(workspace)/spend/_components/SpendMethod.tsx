import { Derivation } from "@/app/_ui/Derivation";
import { percent } from "@/lib/view/chance";
import { money } from "@/lib/view/format";
import type { SpendList } from "@/lib/view/spend";
import { hours } from "@/lib/view/time";

/** How the list is made, and when it is not the best. */
export function SpendMethod({ list }: { readonly list: SpendList }) {
  const { years, discountRate, transferHours, steps } = list;
  return (
    <Derivation
      title="How the list is worked out"
      steps={[
        {
          label: "Loss of a part",
          formula: `Σ months, lines: stops × [own + max(own shelf empty, none anywhere) × (elsewhere − own) + none anywhere × (none − elsewhere)], ${years} years`,
          value: "part by part",
          source: "stops and costs of the evaluation",
        },
        {
          label: "Later losses count less",
          formula: "per year",
          value: percent(discountRate),
          source: "assumption in use",
        },
        { label: "Way from another site", value: hours(transferHours), source: "assumption in use" },
        {
          label: "A piece bought",
          formula: "on its shelf after the lead time; works like one stored under a year",
          value: "one piece",
        },
        {
          label: "Next piece",
          formula: "largest (loss without − loss with) ÷ price that fits",
          value: "again and again",
        },
        {
          label: "Avoided by the list",
          formula: "sum over its pieces",
          value: money(steps.at(-1)?.avoided ?? 0),
        },
      ]}
    >
      <p>
        Marginal analysis, as for expected backorders (Sherbrooke, Optimal Inventory Modeling of Systems, from
        memory). It is exact where each further piece of a part helps less than the one before and no part was
        passed over for its price. Where a first piece alone helps little and a second much, the list comes to
        them late; with a part passed over, the last of the money may do better elsewhere. Not weighed:
        freight, storage, what is left when the part retires, and hardware too new for a controller (see the
        rules).
      </p>
      <p className="mt-2">
        The figures are estimates from sparse records, at the mean of the uncertain rates. A decision is
        signed by a named person, not by this list.
      </p>
    </Derivation>
  );
}
