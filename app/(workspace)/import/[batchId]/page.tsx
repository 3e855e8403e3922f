import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { NotYours } from "@/app/(workspace)/import/_components/NotYours";
import { LoadedFile } from "@/app/(workspace)/import/[batchId]/_components/LoadedFile";
import { StagedFile } from "@/app/(workspace)/import/[batchId]/_components/StagedFile";
import { signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readImport } from "@/lib/data/importView";
import { readRowList } from "@/lib/view/importRows";
import { stateWord } from "@/lib/view/importWords";
import { moment } from "@/lib/view/time";

export const metadata: Metadata = { title: "Register file" };

interface Props {
  readonly params: Promise<{ readonly batchId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

export default async function RegisterFilePage({ params, searchParams }: Props) {
  const actor = await signedInActor();
  const [{ batchId }, { asOf: asked, without }] = await Promise.all([params, searchParams]);
  const asOf = await readAsOf(actor, typeof asked === "string" ? asked : undefined);
  if (!maySomewhere(actor.grants, "register:import")) return <NotYours />;
  if (!UUID.test(batchId)) notFound();
  const leftOut = readRowList(typeof without === "string" ? without : "") ?? [];
  const view = await readImport(actor, batchId, leftOut);
  if (!view) notFound();
  const { head, staged, loaded } = view;
  return (
    <>
      <PageHeader
        above={<Breadcrumbs crumbs={[{ label: "Load registers", href: "/import" }]} />}
        title={head.fileName}
        lead={`${head.registerLabel}, handed in by ${head.by} on ${moment(head.createdAt, "UTC")} UTC: ${stateWord(head.state)}.`}
        asOf={asOf}
      />
      {staged ? <StagedFile batchId={head.id} register={head.register} staged={staged} /> : null}
      {loaded ? <LoadedFile head={head} loaded={loaded} /> : null}
    </>
  );
}
