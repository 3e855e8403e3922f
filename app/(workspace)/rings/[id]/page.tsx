import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { RingFamily } from "@/app/(workspace)/rings/[id]/_components/RingFamily";
import { RingNodes } from "@/app/(workspace)/rings/[id]/_components/RingNodes";
import { TiedTogether } from "@/app/(workspace)/rings/[id]/_components/TiedTogether";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readRingSheet } from "@/lib/data/rings";
import { count } from "@/lib/view/number";
import { linesOfRing } from "@/lib/view/ring";

export const generateMetadata = titled("Ring sheet");

interface RingPageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function RingPage({ params, searchParams }: RingPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const sheet = await readRingSheet(actor, { id: (await params).id, asOf });
  if (sheet === null) notFound();
  const { name, site, rows, outOfService } = sheet;
  const crumbs = [
    { label: "Installed", href: "/installed" },
    { label: `${site.code} ${site.name}`, href: `/installed?site=${encodeURIComponent(site.code)}` },
    ...linesOfRing(rows).map((code) => ({
      label: code,
      href: `/installed?line=${encodeURIComponent(code)}`,
    })),
  ];
  return (
    <>
      <PageHeader
        title={`Ring ${name}`}
        lead={`${count(rows.length, "node")} in one light path, from the controller and back to it.`}
        asOf={asOf}
        above={<Breadcrumbs crumbs={crumbs} />}
      />
      {outOfService === 0 ? null : (
        <p className="measure mb-4">
          {`Left out: ${count(outOfService, "node")} on record at machines out of service.`}
        </p>
      )}
      <TiedTogether rows={rows} />
      <RingFamily sheet={sheet} mayEdit={mayAt(actor.grants, "line:write", site.id)} />
      <RingNodes rows={rows} />
    </>
  );
}
