import { notFound } from "next/navigation";
import { z } from "zod";
import { titled } from "@/app/_ui/titled";
import { BoardHead } from "@/app/(workspace)/plans/[id]/_components/board/BoardHead";
import { HandTables } from "@/app/(workspace)/plans/[id]/money/_components/HandTables";
import { MoneyTables } from "@/app/(workspace)/plans/[id]/money/_components/MoneyTables";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { readBoard } from "@/lib/data/planBoard";

export const generateMetadata = titled("Money and hands of the plan");

interface MoneyPageProps {
  readonly params: Promise<{ readonly id: string }>;
}

async function MoneyPage({ params }: MoneyPageProps) {
  const actor = await signedInActor();
  const { id } = await params;
  const page = z.uuid().safeParse(id).success ? await readBoard(actor, { planId: id, whole: false }) : null;
  if (!page) notFound();
  return (
    <>
      <BoardHead page={page} current="money" />
      <MoneyTables view={page.view} />
      <HandTables view={page.view} />
    </>
  );
}

export default lookingBack(MoneyPage);
