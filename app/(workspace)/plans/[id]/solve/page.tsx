import { notFound } from "next/navigation";
import { z } from "zod";
import { titled } from "@/app/_ui/titled";
import { BoardHead } from "@/app/(workspace)/plans/[id]/_components/board/BoardHead";
import { Found } from "@/app/(workspace)/plans/[id]/solve/_components/Found";
import { SolvePanel } from "@/app/(workspace)/plans/[id]/solve/_components/SolvePanel";
import { signedInActor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { readBoard } from "@/lib/data/planBoard";
import { listSolveRuns, readSolveRun } from "@/lib/data/solveRun";

export const generateMetadata = titled("Search for the best plan");

interface SolvePageProps {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function SolvePage({ params }: SolvePageProps) {
  const actor = await signedInActor();
  const { id } = await params;
  const page = z.uuid().safeParse(id).success ? await readBoard(actor, { planId: id, whole: false }) : null;
  if (!page) notFound();
  const runs = await listSolveRuns(actor, id);
  const [latest] = runs;
  const run = latest && latest.state !== "running" ? await readSolveRun(actor, latest.id) : null;
  const writes =
    page.status === "draft" &&
    page.view.lines.every(({ siteId }) => mayAt(actor.grants, "plan:write", siteId));
  return (
    <>
      <BoardHead page={page} current="solve" />
      <SolvePanel planId={id} version={page.version} writes={writes} latest={latest ?? null} />
      {run?.outcome ? <Found page={page} outcome={run.outcome} writes={writes} /> : null}
    </>
  );
}
