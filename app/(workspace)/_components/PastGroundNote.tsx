import { Notice } from "@/app/_ui/Notice";
import type { PastGround } from "@/lib/data/pastGround";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { day } from "@/lib/view/time";

interface PastGroundNoteProps {
  readonly ground: PastGround | null;
  readonly asOf: IsoDate;
  readonly engine: string;
}

/** Says of figures that look back what they were computed from. */
export function PastGroundNote({ ground, asOf, engine }: PastGroundNoteProps) {
  if (ground === null || ground === "nothing") return null;
  if (ground === "snapshot")
    return (
      <Notice kind="info" title="From the snapshot of that day">
        Former records of {day(asOf)} are not kept, but what the figures were computed from was frozen on it.
        Version {engine} of the computation made these figures from it.
      </Notice>
    );
  return (
    <Notice kind="info" title="From the records as they stood">
      Version {engine} of the computation made these figures from the records as they were kept then. A report
      given out at the time may differ where an earlier version made it.
    </Notice>
  );
}
