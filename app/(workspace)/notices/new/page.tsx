import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { NoticeForm } from "@/app/(workspace)/notices/new/_components/NoticeForm";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readNoticeStart } from "@/lib/data/notices";

export const generateMetadata = titled("Record a notice");

export default async function NewNoticePage() {
  const actor = await signedInActor();
  const start = await readNoticeStart(actor);
  if (!start) notFound();
  return (
    <>
      <PageHeader
        title="Record a notice"
        lead="Paste what the maker wrote, load it as a file, or type it in. Whatever is found is a proposal until you keep it."
        above={<Breadcrumbs crumbs={[{ label: "Notices", href: "/notices" }]} />}
      />
      <NoticeForm today={await readAsOf(actor, undefined)} start={start} />
    </>
  );
}
