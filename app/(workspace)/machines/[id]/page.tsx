import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { AxisFactRows } from "@/app/(workspace)/machines/[id]/_components/AxisFactRows";
import { AxisRows } from "@/app/(workspace)/machines/[id]/_components/AxisRows";
import { CardEntries } from "@/app/(workspace)/machines/[id]/_components/CardEntries";
import { ChangeController } from "@/app/(workspace)/machines/[id]/_components/ChangeController";
import { ControllerFigures } from "@/app/(workspace)/machines/[id]/_components/ControllerFigures";
import { Panels } from "@/app/(workspace)/machines/[id]/_components/Panels";
import { PlaceRows } from "@/app/(workspace)/machines/[id]/_components/PlaceRows";
import { SeenLastRows } from "@/app/(workspace)/machines/[id]/_components/SeenLastRows";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readCardEntries } from "@/lib/data/cardEntries";
import { readMachine } from "@/lib/data/machine";
import { readSeenLast } from "@/lib/data/seenLast";
import { machineLead, placesOf } from "@/lib/view/machine";

export const generateMetadata = titled("Machine");

interface MachinePageProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly asOf?: string }>;
}

export default async function MachinePage({ params, searchParams }: MachinePageProps) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asOf = await readAsOf(actor, (await searchParams).asOf);
  const machine = await readMachine(actor, { id: (await params).id, asOf });
  if (machine === null) notFound();
  const { id, code, name, line, site } = machine;
  const [entries, seen] = await Promise.all([
    readCardEntries(actor, machine),
    readSeenLast(actor, { machineId: id, asOf }),
  ]);
  const mayEdit = mayAt(actor.grants, "line:write", site.id);
  const crumbs = [
    { label: "Installed", href: "/installed" },
    { label: `${site.code} ${site.name}`, href: `/installed?site=${encodeURIComponent(site.code)}` },
    { label: `${line.code} ${line.name}`, href: `/installed?line=${encodeURIComponent(line.code)}` },
  ];
  return (
    <>
      <PageHeader
        title={`${line.code} / ${code} ${name}`}
        lead={machineLead(machine)}
        asOf={asOf}
        above={<Breadcrumbs crumbs={crumbs} />}
        actions={
          <>
            <LinkButton href={`/audit?of=machine&id=${id}`}>History</LinkButton>
            <LinkButton href={`/machines/${id}/card`} kind="primary">
              Night card
            </LinkButton>
            <LinkButton href={`/lines/${encodeURIComponent(line.code)}#machine-${encodeURIComponent(code)}`}>
              Line {line.code}
            </LinkButton>
          </>
        }
      />
      <Section title="Controller">
        <ControllerFigures controller={machine.controller} />
        {mayEdit && machine.controller ? (
          <div className="no-print mt-3">
            <ChangeController controller={machine.controller} />
          </div>
        ) : null}
      </Section>
      <Section title="Axes">
        <AxisRows axes={machine.axes} />
      </Section>
      <Section
        title="Cables, travel and homing"
        lead="What a retrofit has to find again. Lengths in metres, travel in the axis's own unit."
      >
        <AxisFactRows axes={machine.axes} mayEdit={mayEdit} />
      </Section>
      <Section
        id="panels"
        title="Panels"
        lead="The cabinets of the machine, and how somebody finds them at night."
      >
        <Panels machineId={id} panels={machine.panels} places={placesOf(machine)} mayEdit={mayEdit} />
      </Section>
      <Section
        id="card"
        title="For the night card"
        lead="Copies of what runs in the controller, and functions to call. Never a password, never a person's name."
      >
        <CardEntries machineId={id} asOf={asOf} {...entries} mayEdit={mayEdit} />
      </Section>
      <Section title="Places and units" lead="What sits in each place, and what sat there before.">
        <PlaceRows places={placesOf(machine)} />
      </Section>
      {seen ? (
        <Section
          id="seen"
          title="Seen last"
          lead="The last day each source speaks of the machine. One no source has seen for long may not be there any more."
        >
          <SeenLastRows machineId={id} label={`${line.code} / ${code}`} seen={seen} mayEdit={mayEdit} />
        </Section>
      ) : null}
    </>
  );
}
