import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { NotYours } from "@/app/(workspace)/import/_components/NotYours";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readSources } from "@/lib/data/importSources";
import { plainNumber } from "@/lib/view/number";

export const generateMetadata = titled("Systems files come from");

interface Props {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

const HEADS = [
  "System",
  "Site",
  "Registers",
  { text: "Files", end: true },
  { text: "Words learned", end: true },
];

export default async function SourcesPage({ searchParams }: Props) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  if (!maySomewhere(actor.grants, "register:import")) return <NotYours />;
  const sources = await readSources(actor);
  return (
    <>
      <PageHeader
        above={<Breadcrumbs crumbs={[{ label: "Load registers", href: "/import" }]} />}
        title="Systems files come from"
        lead="Each system of a site writes its files in its own way: its columns, its words for nothing, its names of lines and machines. What was said of one file is used for the next."
        asOf={asOf}
      />
      <Section title="Systems">
        {sources.length === 0 ? (
          <p>
            No file has been given a system yet. On the page of a file that waits, say which system it comes
            from.
          </p>
        ) : (
          <RowTable caption="Systems files come from" heads={HEADS}>
            {sources.map(({ id, name, siteCode, registers, files, words }) => (
              <tr key={id}>
                <th scope="row">
                  <AsOfLink href={`/import/sources/${id}`}>{name}</AsOfLink>
                </th>
                <td>{siteCode ?? "the group"}</td>
                <td>{registers.join(", ") || "none kept yet"}</td>
                <td data-align="end">{plainNumber(files)}</td>
                <td data-align="end">{plainNumber(words)}</td>
              </tr>
            ))}
          </RowTable>
        )}
      </Section>
    </>
  );
}
