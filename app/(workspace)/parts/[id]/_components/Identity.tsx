import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Section } from "@/app/_ui/Section";
import { itemClassName } from "@/lib/view/linePart";
import type { PartDossier } from "@/lib/view/partDossier";

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
export function Identity({ part }: { readonly part: PartDossier }) {
  return (
    <Section title="What it is" id="identity">
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
    </Section>
  );
}
