import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { NoticeTable } from "@/app/(workspace)/notices/_components/NoticeTable";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readNotices } from "@/lib/data/notices";
import { noticeRows } from "@/lib/view/noticeList";
import { count } from "@/lib/view/number";

export const generateMetadata = titled("Discontinuance notices");

interface NoticesPageProps {
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function NoticesPage({ searchParams }: NoticesPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const rows = noticeRows(await readNotices(actor, asOf), asOf);
  const open = rows.filter(({ state }) => state === "open").length;
  const mayWrite = maySomewhere(actor.grants, "register:import");
  const add = mayWrite ? <LinkButton href="/notices/new">Record a notice</LinkButton> : null;
  return (
    <>
      <PageHeader
        title="Discontinuance notices"
        lead={`${count(open, "notice")} to be decided; those with the least time to start the order stand on top.`}
        asOf={asOf}
        actions={rows.length === 0 ? null : add}
      />
      {rows.length === 0 ? (
        <EmptyState title="No notice is recorded" actions={add}>
          That does not mean that no maker gave one. Paste the text of a notice, load its file, or type it in:
          the parts, sites and units it touches are found for you.
        </EmptyState>
      ) : (
        <NoticeTable rows={rows} />
      )}
    </>
  );
}
