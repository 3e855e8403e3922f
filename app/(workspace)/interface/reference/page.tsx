import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { Call } from "@/app/(workspace)/interface/reference/_components/Call";
import { Customs } from "@/app/(workspace)/interface/reference/_components/Customs";
import { Messages } from "@/app/(workspace)/interface/reference/_components/Messages";
import { signedInActor } from "@/lib/access/actor";
import { authUrl } from "@/lib/env";
import { OPERATIONS, ROOT } from "@/lib/interface/operations";
import { PROBLEMS } from "@/lib/interface/problem";
import { referenceEntry } from "@/lib/interface/reference";

export const generateMetadata = titled("The interface, call by call");

export default async function ReferencePage() {
  await signedInActor({ amounts: "hidden" });
  const entries = OPERATIONS.map((operation) => referenceEntry(operation, authUrl()));
  return (
    <>
      <PageHeader
        title="The interface, call by call"
        above={<Breadcrumbs crumbs={[{ label: "Interface", href: "/interface" }]} />}
        lead={`${entries.length} calls below ${ROOT}. This page and the document for programs are made from what the calls are run with.`}
        actions={
          <LinkButton href={`${ROOT}/openapi.json`} download>
            OpenAPI 3.1 document
          </LinkButton>
        }
      />
      <Section title="Customs">
        <Customs />
      </Section>
      <Section title="Calls" lead="Open one to see what it takes, what it answers and an example.">
        {entries.map((entry) => (
          <Call key={entry.name} entry={entry} />
        ))}
      </Section>
      <Section
        title="Problems"
        lead="What cannot be done is answered by RFC 9457: type, title, status, detail with what to do, and for each field what came and what would do."
      >
        <RowTable caption="Problems" heads={["Status", "Title"]}>
          {Object.entries(PROBLEMS).map(([kind, { status, title }]) => (
            <tr key={kind} id={kind}>
              <td>{status}</td>
              <td>{title}</td>
            </tr>
          ))}
        </RowTable>
      </Section>
      <Section title="Messages about changes">
        <Messages />
      </Section>
    </>
  );
}
