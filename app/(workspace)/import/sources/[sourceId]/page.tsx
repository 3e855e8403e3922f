import { notFound } from "next/navigation";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { NotYours } from "@/app/(workspace)/import/_components/NotYours";
import { NullWords } from "@/app/(workspace)/import/sources/[sourceId]/_components/NullWords";
import { OpenWords } from "@/app/(workspace)/import/sources/[sourceId]/_components/OpenWords";
import { TaughtWords } from "@/app/(workspace)/import/sources/[sourceId]/_components/TaughtWords";
import { Versions } from "@/app/(workspace)/import/sources/[sourceId]/_components/Versions";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readSource } from "@/lib/data/importSources";
import { latestVersions } from "@/lib/view/importSource";
import { stateWord } from "@/lib/view/importWords";

export const generateMetadata = titled("System files come from");

interface Props {
  readonly params: Promise<{ readonly sourceId: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function SourcePage({ params, searchParams }: Props) {
  const actor = await signedInActor({ amounts: "hidden" });
  const [{ sourceId }, { asOf: asked }] = await Promise.all([params, searchParams]);
  const asOf = await readAsOf(actor, asked);
  if (!maySomewhere(actor.grants, "register:import")) return <NotYours />;
  const source = await readSource(actor, sourceId);
  if (!source) notFound();
  return (
    <>
      <PageHeader
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Load registers", href: "/import" },
              { label: "Systems files come from", href: "/import/sources" },
            ]}
          />
        }
        title={source.name}
        lead={source.siteCode === null ? "A system of the whole group." : `A system of ${source.siteCode}.`}
        asOf={asOf}
      />
      <Section
        title="Words to explain"
        lead="Names of lines and machines, values and words of texts in its files that nothing on record is called. What you choose is used for every later file of this system."
      >
        <OpenWords sourceId={source.id} words={source.open} />
      </Section>
      <Section title="Words learned">
        <TaughtWords words={source.words} />
      </Section>
      <Section
        title="Words for nothing"
        lead="Cells that hold one of these are read as not known, which is never zero."
      >
        {latestVersions(source.versions).map((version) => (
          <NullWords key={`${version.register} ${version.version}`} sourceId={source.id} version={version} />
        ))}
        {source.versions.length === 0 ? <p>Read a file of this system first.</p> : null}
      </Section>
      <Section title="How its files are read">
        <Versions versions={source.versions} />
      </Section>
      <Section title="Its files">
        <ul className="list-disc pl-5">
          {source.files.map(({ id, fileName, state }) => (
            <li key={id}>
              <AsOfLink href={`/import/${id}`}>{fileName}</AsOfLink>: {stateWord(state)}
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}
