import type { IsoDate } from "@/lib/kernel/isoDate";

/** A kind of source and the last day it speaks of a machine; null is never. */
export interface SourceDay {
  readonly source: string;
  readonly lastOn: IsoDate | null;
}

/** The last time a list saw what stands in a place, or the controller. */
export interface PlaceSight {
  readonly place: string;
  readonly serial: string | null;
  readonly source: string;
  readonly lastOn: IsoDate;
  /** As the list gave it; empty is not said. */
  readonly firmware: string;
}

/** When anything last spoke of a machine, and whether it is still in service. */
export interface SeenLast {
  readonly retiredOn: IsoDate | null;
  readonly retiredReason: string;
  readonly sources: readonly SourceDay[];
  readonly places: readonly PlaceSight[];
}

/** The latest day any source speaks of it; null when none does. */
export function lastSign({ sources }: Pick<SeenLast, "sources">): IsoDate | null {
  return (
    sources
      .flatMap(({ lastOn }) => lastOn ?? [])
      .sort()
      .at(-1) ?? null
  );
}
