import { notFound } from "next/navigation";
import { z } from "zod";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { Deliveries } from "@/app/(workspace)/interface/webhooks/[id]/_components/Deliveries";
import { HookChanges } from "@/app/(workspace)/interface/webhooks/[id]/_components/HookChanges";
import { signedInActor } from "@/lib/access/actor";
import { readWebhook } from "@/lib/data/webhooks";
import { hookState, subjectWords } from "@/lib/view/webhook";

export const generateMetadata = titled("Webhook");

interface WebhookPageProps {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function WebhookPage({ params }: WebhookPageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const { id } = await params;
  const found = z.uuid().safeParse(id).success ? await readWebhook(actor, id) : null;
  if (!found) notFound();
  const { webhook, deliveries } = found;
  return (
    <>
      <PageHeader
        title={webhook.name}
        above={<Breadcrumbs crumbs={[{ label: "Interface", href: "/interface" }]} />}
        lead={`${hookState(webhook).replace(/\.?$/, ".")} Told at ${webhook.siteCode ?? "all sites"}: ${subjectWords(webhook.subjects)}.`}
      />
      <p className="mb-4 break-all">{webhook.address}</p>
      <HookChanges hook={webhook} />
      <Section
        title="Messages"
        lead="The last 100, the newest first. One that arrived is kept for 30 days. A message behind one that fails waits until that one arrives or is given up."
      >
        <Deliveries rows={deliveries} />
      </Section>
    </>
  );
}
