import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AccessKeys } from "@/app/(workspace)/interface/_components/AccessKeys";
import { Webhooks } from "@/app/(workspace)/interface/_components/Webhooks";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAccessKeys } from "@/lib/data/accessKeys";
import { readSiteNames } from "@/lib/data/siteNames";
import { readWebhooks, rulesWebhooks } from "@/lib/data/webhooks";
import { KEY_DEEDS } from "@/lib/schema/accessKey";

export const generateMetadata = titled("Interface");

export default async function InterfacePage() {
  const actor = await signedInActor({ amounts: "hidden" });
  const [keys, sites, hooks] = await Promise.all([
    readAccessKeys(actor),
    readSiteNames(actor),
    readWebhooks(actor),
  ]);
  const deeds = KEY_DEEDS.filter((deed) => maySomewhere(actor.grants, deed));
  return (
    <>
      <PageHeader
        title="Interface"
        lead="How other systems read what Ebbline holds, write what they know, and are told of changes."
        actions={<LinkButton href="/interface/reference">What it does, call by call</LinkButton>}
      />
      <Section
        title="Access keys"
        lead="A system with a key acts in the name of the person who made it, and never beyond what both may at that moment. Treat a key as a password."
      >
        <AccessKeys {...{ keys, sites, deeds }} />
      </Section>
      {rulesWebhooks(actor) ? (
        <Section
          title="Systems that are told of changes"
          lead="A message names what changed and carries no figures; whoever gets it reads them with a key of its own. Each is signed, tried again after a growing pause, and sent in order."
        >
          <Webhooks {...{ hooks, sites }} />
        </Section>
      ) : null}
    </>
  );
}
