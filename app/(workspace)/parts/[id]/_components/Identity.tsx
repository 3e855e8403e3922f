import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Fold } from "@/app/_ui/Fold";
import { WhereFrom } from "@/app/_ui/WhereFrom";
import { ChangePlate } from "@/app/(workspace)/parts/[id]/_components/ChangePlate";
import { profileFamilyName } from "@/lib/retrofit/profileFamilies";
import { itemClassName } from "@/lib/view/linePart";
import { NOT_KNOWN } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { partFolds } from "@/lib/view/partFolds";

type Related = PartDossier["successors"][number];

function Links({ parts }: { readonly parts: readonly Related[] }) {
  return (
    <ul>
      {parts.map((part) => (
        <li key={part.id}>
          <AsOfLink href={`/parts/${part.id}`}>{part.number}</AsOfLink> by {part.maker}
          {part.condition === null ? ", no condition recorded" : `: ${part.condition}`}
        </li>
      ))}
    </ul>
  );
}

/** Who makes the part, what else it is called, and what replaces it on which condition. */
export function Identity({ part, mayEdit }: { readonly part: PartDossier; readonly mayEdit: boolean }) {
  return (
    <Fold page="part" title="What it is" id="identity" figure={partFolds.identity(part)}>
      <dl className="grid grid-cols-[max-content_1fr] gap-x-6 gap-y-1.5">
        <dt className="text-ink-2">Maker</dt>
        <dd>{part.maker}</dd>
        <dt className="text-ink-2">Number</dt>
        <dd>{part.number}</dd>
        <dt className="text-ink-2">Class</dt>
        <dd>{itemClassName(part.itemClass)}</dd>
        <dt className="text-ink-2">Family</dt>
        <dd>
          {part.family === null ? "none recorded" : part.family.name}
          {part.family?.description ? `, ${part.family.description}` : null}
          {part.family === null ? null : (
            <>
              {" – "}
              <AsOfLink href={`/last-buy/${part.family.id}`}>how many to buy at the last chance</AsOfLink>
            </>
          )}
        </dd>
        <dt className="text-ink-2">Rated power</dt>
        <dd>{part.powerKw === null ? NOT_KNOWN : `${part.powerKw} kW`}</dd>
        <dt className="text-ink-2">Profile family</dt>
        <dd>{part.profileFamily === null ? NOT_KNOWN : profileFamilyName(part.profileFamily)}</dd>
        <dt className="text-ink-2">Also written</dt>
        <dd>
          {part.aliases.length === 0
            ? "no other spelling recorded"
            : part.aliases
                .map(({ alias, siteCode }) => (siteCode === null ? alias : `${alias} (at ${siteCode})`))
                .join(", ")}
        </dd>
        <dt className="text-ink-2">Successor</dt>
        <dd>{part.successors.length === 0 ? "none recorded" : <Links parts={part.successors} />}</dd>
        {part.successorOf.length === 0 ? null : (
          <>
            <dt className="text-ink-2">Replaces</dt>
            <dd>
              <Links parts={part.successorOf} />
            </dd>
          </>
        )}
      </dl>
      <WhereFrom entity="Part" id={part.id} of={part.number} />
      {mayEdit ? (
        <div className="no-print mt-3">
          <ChangePlate part={part} />
        </div>
      ) : null}
    </Fold>
  );
}
