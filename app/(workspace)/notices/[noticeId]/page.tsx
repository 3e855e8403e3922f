import { notFound } from "next/navigation";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { NoticeFacts } from "@/app/(workspace)/notices/[noticeId]/_components/NoticeFacts";
import { NoticeFigures } from "@/app/(workspace)/notices/[noticeId]/_components/NoticeFigures";
import { TakeBackNotice } from "@/app/(workspace)/notices/[noticeId]/_components/TakeBackNotice";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readNotice } from "@/lib/data/notices";
import { noticeRows, noticeStateName } from "@/lib/view/noticeList";

export const generateMetadata = titled("Notice");

interface NoticePageProps {
  readonly params: Promise<{ readonly noticeId: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function NoticePage({ params, searchParams }: NoticePageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const notice = await readNotice(actor, { noticeId: (await params).noticeId, asOf });
  const [row] = notice ? noticeRows([notice], asOf) : [];
  if (!notice || !row) notFound();
  const mayUndo = row.state !== "taken-back" && maySomewhere(actor.grants, "register:import");
  return (
    <>
      <PageHeader
        title={notice.document}
        lead={`Discontinuance notice of ${notice.maker || "a maker not named"}: ${noticeStateName(row.state)}.`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={[{ label: "Notices", href: "/notices" }]} />}
        actions={mayUndo ? <TakeBackNotice noticeId={notice.id} /> : null}
      />
      <NoticeFigures row={row} asOf={asOf} />
      <Section title="How many to buy">
        {row.families.length === 0 ? (
          <p>The parts belong to no family; a last buy is worked out by family. Give them one by Import.</p>
        ) : (
          <div className="flex flex-wrap gap-2">
            {row.families.map(({ id, name, decisionId }) =>
              decisionId === null ? (
                <LinkButton key={id} href={`/last-buy/${id}`} kind="primary">
                  {`Work out ${name}`}
                </LinkButton>
              ) : (
                <LinkButton
                  key={id}
                  href={`/last-buy/decisions/${decisionId}`}
                >{`${name}: the decision`}</LinkButton>
              ),
            )}
          </div>
        )}
      </Section>
      <Section title="Parts">
        <p className="flex flex-wrap gap-x-4">
          {row.parts.map(({ id, number }) => (
            <AsOfLink key={id} href={`/parts/${id}`}>
              {number}
            </AsOfLink>
          ))}
        </p>
      </Section>
      <Section title="What was recorded">
        <NoticeFacts notice={notice} />
      </Section>
    </>
  );
}
