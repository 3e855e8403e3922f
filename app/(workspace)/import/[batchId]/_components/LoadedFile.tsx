import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { TakeBack } from "@/app/(workspace)/import/_components/TakeBack";
import type { ImportHead, LoadedImport } from "@/lib/view/importView";
import { count, plainNumber } from "@/lib/view/number";
import { moment } from "@/lib/view/time";
import { ChangeTable } from "./ChangeTable";
import { MadeRows } from "./MadeRows";
import { ProblemTable } from "./ProblemTable";
import { ThingCounts } from "./ThingCounts";
import { WaitingRows } from "./WaitingRows";

/** What a loaded file did, and the way back. */
export function LoadedFile({ head, loaded }: { readonly head: ImportHead; readonly loaded: LoadedImport }) {
  const { added, changed, unchanged, refused } = head.counts;
  const isLoaded = head.state === "committed";
  return (
    <>
      <div role="status">
        <Notice
          kind="info"
          title={
            isLoaded
              ? `Loaded on ${moment(head.committedAt, "UTC")} UTC`
              : `Taken back on ${moment(head.undoneAt, "UTC")} UTC`
          }
        >
          {isLoaded ? "" : "Nothing of it counts any more. When it was loaded: "}
          {plainNumber(added)} added, {plainNumber(changed)} changed, {plainNumber(unchanged)} unchanged;{" "}
          {count(refused, "row")} refused.
        </Notice>
      </div>
      {isLoaded ? (
        <div className="mb-6 flex flex-wrap gap-2">
          <LinkButton href="/lines" kind="primary">
            Look at the ranking
          </LinkButton>
          <LinkButton href="/import">Hand in the next file</LinkButton>
          <TakeBack batchId={head.id} fileName={head.fileName} />
        </div>
      ) : null}
      {isLoaded ? <WaitingRows batchId={head.id} waiting={loaded.waiting} rests={loaded.rests} /> : null}
      <Section title={isLoaded ? "What it wrote" : "What it had written"}>
        <ThingCounts things={loaded.things} unchangedKnown={false} />
        {loaded.made.shown.length > 0 ? <MadeRows made={loaded.made} /> : null}
      </Section>
      {loaded.changes.count > 0 ? (
        <Section title="Before and after">
          <ChangeTable changes={loaded.changes} />
        </Section>
      ) : null}
      {loaded.problems.count > 0 ? (
        <Section title="What was found against its rows">
          <ProblemTable problems={loaded.problems} />
        </Section>
      ) : null}
    </>
  );
}
