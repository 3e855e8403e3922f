import { notFound } from "next/navigation";
import { Section } from "@/app/_ui/Section";
import { titled } from "@/app/_ui/titled";
import { CountHead } from "@/app/(workspace)/counts/[id]/_components/CountHead";
import { Settle } from "@/app/(workspace)/counts/[id]/variance/_components/Settle";
import { VarianceFigures } from "@/app/(workspace)/counts/[id]/variance/_components/VarianceFigures";
import { VarianceTable } from "@/app/(workspace)/counts/[id]/variance/_components/VarianceTable";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readCountVariance } from "@/lib/data/count";
import { varianceSheet } from "@/lib/view/count";

export const generateMetadata = titled("Differences of a count");

export default async function VariancePage({
  params,
}: {
  readonly params: Promise<{ readonly id: string }>;
}) {
  const actor = await signedInActor();
  const { id } = await params;
  const [asOf, found] = await Promise.all([readAsOf(actor, undefined), readCountVariance(actor, id)]);
  if (!found) notFound();
  const { sheet, lines } = found;
  const variance = varianceSheet(lines, sheet.limitEuro);
  const seen = sheet.lines.reduce((sum, { version }) => sum + version, 0);
  return (
    <>
      <CountHead sheet={sheet} asOf={asOf} view="variance" showsAmounts />
      <VarianceFigures variance={variance} sheet={sheet} />
      <Section title="Book against counted">
        <VarianceTable variance={variance} />
      </Section>
      <Settle count={sheet} variance={variance} seen={seen} />
    </>
  );
}
