import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Fold } from "@/app/_ui/Fold";
import { assumptionSetName } from "@/lib/view/assumptionSet";
import { count } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";

/** What stands in for records that are missing, and on what everything was computed. */
export function AssumedInputs({ part }: { readonly part: PartDossier }) {
  const assumed = part.pool?.assumed ?? [];
  return (
    <Fold
      page="part"
      title="Assumed inputs"
      id="assumed"
      figure={assumed.length === 0 ? "none particular to this part" : count(assumed.length, "assumption")}
    >
      {assumed.length === 0 ? (
        <p>Nothing particular to this part was assumed.</p>
      ) : (
        <ul className="measure list-disc pl-5">
          {assumed.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      <p className="mt-2 text-ink-2 text-sm">
        Chances of working after storage and the weights of the rates stand in the assumptions with their
        basis. Computed by {part.engine} on data version {part.dataVersion} with{" "}
        <AsOfLink href="/assumptions">{assumptionSetName(part.assumptionSet)}</AsOfLink>.
      </p>
    </Fold>
  );
}
