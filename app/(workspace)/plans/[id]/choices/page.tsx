import { notFound } from "next/navigation";
import { z } from "zod";
import { titled } from "@/app/_ui/titled";
import { BoardHead } from "@/app/(workspace)/plans/[id]/_components/board/BoardHead";
import { BrokenList } from "@/app/(workspace)/plans/[id]/_components/board/BrokenList";
import { ChoiceTable } from "@/app/(workspace)/plans/[id]/choices/_components/ChoiceTable";
import { FundingLine } from "@/app/(workspace)/plans/[id]/choices/_components/FundingLine";
import { signedInActor } from "@/lib/access/actor";
import { lookingBack } from "@/lib/access/lookingBack";
import { readBoard } from "@/lib/data/planBoard";

export const generateMetadata = titled("Choices of the plan");

interface ChoicesPageProps {
  readonly params: Promise<{ readonly id: string }>;
}

async function ChoicesPage({ params }: ChoicesPageProps) {
  const actor = await signedInActor();
  const { id } = await params;
  const page = z.uuid().safeParse(id).success ? await readBoard(actor, { planId: id, whole: true }) : null;
  if (!page) notFound();
  return (
    <>
      <BoardHead page={page} current="choices" />
      <BrokenList broken={page.view.broken} />
      <ChoiceTable view={page.view} />
      <FundingLine view={page.view} below={page.below} />
    </>
  );
}

export default lookingBack(ChoicesPage);
