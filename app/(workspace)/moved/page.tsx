import { notFound } from "next/navigation";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { Comparison } from "@/app/(workspace)/moved/_components/Comparison";
import { FewSnapshots } from "@/app/(workspace)/moved/_components/FewSnapshots";
import { signedInActor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { listSnapshots, readWeeklyRule } from "@/lib/data/snapshot";
import { readMoved } from "@/lib/data/snapshotMoved";
import { movedSentence } from "@/lib/view/moved";

export const generateMetadata = titled("What moved");

type Asked = Readonly<Partial<Record<"asOf" | "from" | "to", string | string[]>>>;

const one = (value: string | string[] | undefined) => (typeof value === "string" ? value : undefined);

export default async function MovedPage({ searchParams }: { readonly searchParams: Promise<Asked> }) {
  const asked = await searchParams;
  const actor = await signedInActor();
  const asOf = await readAsOf(actor, one(asked.asOf));
  const snapshots = await listSnapshots(actor);
  const mayTake = scopeOf(actor.grants, "plan:write") === "all";
  const weekly = await readWeeklyRule(actor);
  const [latest, previous] = snapshots;
  const from = one(asked.from) ?? previous?.id;
  const to = one(asked.to) ?? latest?.id;
  if (from === undefined || to === undefined || latest === undefined)
    return (
      <>
        <PageHeader title="What moved" asOf={asOf} />
        <FewSnapshots {...{ asOf, mayTake, weekly, only: latest ?? null }} />
      </>
    );
  const look = await readMoved(actor, { from, to, asOf });
  if (look === null) notFound();
  return (
    <>
      <PageHeader title="What moved" asOf={asOf} lead={movedSentence(look)} />
      <Comparison {...{ look, snapshots, mayTake, asOf, weekly }} />
    </>
  );
}
