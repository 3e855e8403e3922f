import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";
import { TakeSnapshot } from "@/app/(workspace)/moved/_components/TakeSnapshot";
import { NOW, type SnapshotMark } from "@/lib/view/moved";
import { day } from "@/lib/view/time";
import { type WeeklyRule, weeklyWords } from "@/lib/view/weekly";

interface FewSnapshotsProps {
  readonly only: SnapshotMark | null;
  readonly asOf: string;
  readonly mayTake: boolean;
  readonly weekly: WeeklyRule;
}

/** Stands where the comparison would, until there are two snapshots. */
export function FewSnapshots({ only, asOf, mayTake, weekly }: FewSnapshotsProps) {
  return (
    <EmptyState
      title={only ? `One snapshot so far, of ${day(only.asOf)}` : "No snapshot yet"}
      actions={
        <>
          {mayTake ? <TakeSnapshot asOf={asOf} /> : null}
          {only ? (
            <LinkButton href={`/moved?from=${only.id}&to=${NOW}`}>
              Compare it with the data as they are
            </LinkButton>
          ) : null}
        </>
      }
    >
      <p>
        What moved is told between two snapshots, one for a day. {weeklyWords(weekly)} Somebody who plans at
        all sites can take one at any time.
      </p>
    </EmptyState>
  );
}
