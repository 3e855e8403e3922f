import "@/app/(workspace)/plans/[id]/request/_components/request.css";
import { notFound } from "next/navigation";
import { z } from "zod";
import { LinkButton } from "@/app/_ui/LinkButton";
import { titled } from "@/app/_ui/titled";
import { BoardHead } from "@/app/(workspace)/plans/[id]/_components/board/BoardHead";
import { LineRequest } from "@/app/(workspace)/plans/[id]/request/_components/LineRequest";
import { PlanRequest } from "@/app/(workspace)/plans/[id]/request/_components/PlanRequest";
import { PrintRequest } from "@/app/(workspace)/plans/[id]/request/_components/PrintRequest";
import { signedInActor } from "@/lib/access/actor";
import { readBoard } from "@/lib/data/planBoard";
import { requestedLines } from "@/lib/view/requestWords";

export const generateMetadata = titled("Capital request");

interface RequestPageProps {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function RequestPage({ params }: RequestPageProps) {
  const actor = await signedInActor();
  const { id } = await params;
  const page = z.uuid().safeParse(id).success ? await readBoard(actor, { planId: id, whole: true }) : null;
  if (!page) notFound();
  return (
    <>
      <div className="no-print">
        <BoardHead page={page} current="request" />
        <div className="mb-4 flex flex-wrap gap-2">
          <PrintRequest />
          <LinkButton href={`/api/plans/${id}/request`} download>
            Workbook (XLSX)
          </LinkButton>
          <LinkButton href={`/api/plans/${id}/request?form=pdf`} download>
            Paper (PDF)
          </LinkButton>
        </div>
      </div>
      <PlanRequest page={page} />
      {requestedLines(page).map((line) => (
        <LineRequest key={line.lineId} {...{ page, line }} />
      ))}
    </>
  );
}
