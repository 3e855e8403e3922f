import { notFound } from "next/navigation";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { PageHeader } from "@/app/_ui/PageHeader";
import { titled } from "@/app/_ui/titled";
import { NotYours } from "@/app/(workspace)/import/_components/NotYours";
import { LoadedFile } from "@/app/(workspace)/import/[batchId]/_components/LoadedFile";
import { WaitingFile } from "@/app/(workspace)/import/[batchId]/_components/WaitingFile";
import { WorkProgress } from "@/app/(workspace)/import/[batchId]/_components/WorkProgress";
import { type Actor, signedInActor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readImportEffect } from "@/lib/data/importEffect";
import { readFileSource } from "@/lib/data/importSources";
import { readImport, readImportPages } from "@/lib/data/importView";
import { readRowList } from "@/lib/view/importRows";
import type { ImportPages, ImportView, StagedImport } from "@/lib/view/importView";
import { stateWord } from "@/lib/view/importWords";
import { moment } from "@/lib/view/time";

export const generateMetadata = titled("Register file");

interface Props {
  readonly params: Promise<{ readonly batchId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

type Word = string | string[] | undefined;

/** One word of an address; given twice it is none. */
const one = (word: Word) => (typeof word === "string" ? word : undefined);

export default async function RegisterFilePage({ params, searchParams }: Props) {
  const actor = await signedInActor({ amounts: "hidden" });
  const [{ batchId }, asked] = await Promise.all([params, searchParams]);
  const asOf = await readAsOf(actor, one(asked.asOf));
  if (!maySomewhere(actor.grants, "register:import")) return <NotYours />;
  if (!UUID.test(batchId)) notFound();
  const view = await readImport(actor, batchId, readRowList(one(asked.without) ?? "") ?? []);
  if (!view) notFound();
  const { problems, changes, made } = asked;
  const pages = { problems: one(problems), changes: one(changes), made: one(made) };
  const { head, progress, staged, loaded } = await withPages(actor, view, pages);
  const source = staged && (await readFileSource(actor, head.id));
  const wantsEffect = staged !== null && asked.effect === "yes";
  const effect = wantsEffect ? readImportEffect(actor, { batchId, leftOut: staged.leftOut }) : null;
  return (
    <>
      <PageHeader
        above={<Breadcrumbs crumbs={[{ label: "Load registers", href: "/import" }]} />}
        title={head.fileName}
        lead={`${head.registerLabel}, handed in by ${head.by} on ${moment(head.createdAt, "UTC")} UTC: ${stateWord(head.state)}.`}
        asOf={asOf}
      />
      {progress ? <WorkProgress batchId={head.id} progress={progress} /> : null}
      {staged ? <WaitingFile {...{ head, staged, source, effect }} /> : null}
      {loaded ? <LoadedFile head={head} loaded={loaded} /> : null}
    </>
  );
}

/** The view with further pages of its long lists in place of the first, where the address asks for them. */
async function withPages(actor: Actor, view: ImportView, pages: ImportPages): Promise<ImportView> {
  if (Object.values(pages).every((page) => page === undefined)) return view;
  const more = await readImportPages(actor, view.head.id, pages);
  const turned = <T extends Pick<StagedImport, "problems" | "changes">>(lists: T): T => ({
    ...lists,
    problems: { ...lists.problems, ...more?.problems },
    changes: { ...lists.changes, ...more?.changes },
  });
  const loaded = view.loaded && { ...turned(view.loaded), made: more?.made ?? view.loaded.made };
  return { ...view, staged: view.staged && turned(view.staged), loaded };
}
