import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { FigureEffectView } from "@/app/(workspace)/_components/FigureEffectView";
import { ChooseParts } from "@/app/(workspace)/parts/merge/_components/ChooseParts";
import { MergeForm } from "@/app/(workspace)/parts/merge/_components/MergeForm";
import { signedInActor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { type MergePreview, previewMerge } from "@/lib/data/partMerge";
import { readPartChoices } from "@/lib/data/partNumbers";
import { movedWords } from "@/lib/view/partMerge";

export const generateMetadata = titled("Merge two parts");

interface Props {
  readonly searchParams: Promise<{ readonly asOf?: string; readonly keep?: string; readonly other?: string }>;
}

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

export default async function MergePage({ searchParams }: Props) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked, keep = "", other = "" } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const may = scopeOf(actor.grants, "register:import") === "all";
  const isAsked = UUID.test(keep) && UUID.test(other) && keep !== other;
  const [parts, preview] = await Promise.all([
    may ? readPartChoices(actor) : [],
    may && isAsked ? previewMerge(actor, { keptId: keep, otherId: other }) : null,
  ]);
  return (
    <>
      <PageHeader
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Parts", href: "/parts" },
              { label: "Numbers to settle", href: "/parts/numbers" },
            ]}
          />
        }
        title="Merge two parts"
        lead="Two parts of the records that are one: every unit, lot, event, place and statement of the second follows the first, and its number becomes another number of it. It can be taken back."
        asOf={asOf}
      />
      {may ? (
        <Section title="Which two">
          <ChooseParts parts={parts} keep={keep} other={other} />
        </Section>
      ) : (
        <Notice kind="info" title="A merge moves records of every site">
          Your role covers some sites only. Ask somebody with a role for all sites.
        </Notice>
      )}
      {preview === null ? null : preview.ok ? (
        <Preview preview={preview.value} />
      ) : (
        <Notice kind="problem" title="These two cannot be merged">
          {preview.error.reason}
        </Notice>
      )}
    </>
  );
}

function Preview({ preview: { kept, other, counts, seen, effect } }: { readonly preview: MergePreview }) {
  const words = movedWords(counts);
  return (
    <>
      <Section title="What would move">
        <p className="measure">
          {`${other.maker} ${other.number} (${other.description}) would be ${kept.maker} ${kept.number} (${kept.description}).`}
        </p>
        <ul className="mt-2 list-disc pl-5">
          {words.length === 0 ? <li>Nothing but the number.</li> : null}
          {words.map((word) => (
            <li key={word}>{word}</li>
          ))}
          {counts.filled.length > 0 ? (
            <li>{`Taken over where not known: ${counts.filled.join(", ")}`}</li>
          ) : null}
        </ul>
      </Section>
      <Section title="What the figures would be">
        <FigureEffectView effect={effect} />
      </Section>
      <Section title="Merge">
        <MergeForm keptId={kept.id} otherId={other.id} seen={seen} />
      </Section>
    </>
  );
}
