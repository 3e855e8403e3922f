import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { ListTable } from "@/app/(workspace)/export/_components/ListTable";
import { WholeInstallation } from "@/app/(workspace)/export/_components/WholeInstallation";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { savableLists } from "@/lib/data/savedList";
import { readCopyDesk } from "@/lib/data/wholeCopy";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("Save as files");

interface ExportPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string | string[] }>;
}

export default async function ExportPage({ searchParams }: ExportPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { asOf: asked } = await searchParams;
  const [asOf, desk] = await Promise.all([
    readAsOf(actor, typeof asked === "string" ? asked : undefined),
    readCopyDesk(actor),
  ]);
  const lists = savableLists(actor);
  return (
    <>
      <PageHeader
        title="Save as files"
        asOf={asOf}
        lead={`${count(lists.length, "list")} of your sites, each with the ids of its rows: CSV for other systems, XLSX with real numbers and days, JSON with what each column is. Figures are of the day looked at; records are as they stand now.`}
      />
      <Section title="Lists" id="lists">
        <ListTable lists={lists} />
      </Section>
      {desk ? (
        <Section
          title="The whole installation"
          id="whole"
          lead="Every table in one archive: a CSV file each, and a manifest with counts and hashes. The same content gives the same hash, on any server."
        >
          <WholeInstallation desk={desk} />
        </Section>
      ) : null}
    </>
  );
}
