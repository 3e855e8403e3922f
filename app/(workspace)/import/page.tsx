import { AsOfLink } from "@/app/_ui/AsOfLink";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { FileList } from "@/app/(workspace)/import/_components/FileList";
import { FirstSteps } from "@/app/(workspace)/import/_components/FirstSteps";
import { NotYours } from "@/app/(workspace)/import/_components/NotYours";
import { RegisterGuide } from "@/app/(workspace)/import/_components/RegisterGuide";
import { UploadForm } from "@/app/(workspace)/import/_components/UploadForm";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readImports } from "@/lib/data/importView";
import { fileLimits } from "@/lib/env";
import { REGISTERS } from "@/lib/intake/registers";
import { LOADING_ORDER } from "@/lib/view/importPattern";

export const generateMetadata = titled("Load registers");

interface Props {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function ImportPage({ searchParams }: Props) {
  const actor = await signedInActor({ amounts: "hidden" });
  const asked = (await searchParams).asOf;
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  if (!maySomewhere(actor.grants, "register:import")) return <NotYours />;
  const { files, isEmpty } = await readImports(actor);
  const choices = LOADING_ORDER.map(({ key }) => ({ value: key, label: REGISTERS[key].label }));
  return (
    <>
      <PageHeader
        title="Load registers"
        lead="Your own lists become the registers Ebbline computes from. A file is read, shown to you with each problem by row and column, and taken over wholly or not at all."
        asOf={asOf}
      />
      {isEmpty ? <FirstSteps /> : null}
      <Section title="Hand in a file">
        <UploadForm choices={choices} limits={fileLimits()} />
      </Section>
      <Section title="Files handed in">
        <FileList files={files} />
        <p className="mt-3 flex flex-wrap gap-x-6 gap-y-1">
          <AsOfLink href="/import/sources">Systems files come from</AsOfLink>
          <AsOfLink href="/parts/numbers">Part numbers to settle</AsOfLink>
        </p>
      </Section>
      <Section
        title="Load your registers in this order"
        id="registers"
        lead="Each stands on those before it: an axis names a machine, an event names an axis. A later file with more rows or other values can always follow."
      >
        <RegisterGuide files={files} />
      </Section>
    </>
  );
}
