import type { IsoDate } from "@/lib/kernel/isoDate";

/** The day the demo company is shown at. */
export const D0: IsoDate = "2026-11-30";

/** First day of the sixty months of events before it. */
export const EVENTS_SINCE: IsoDate = "2021-12-01";

export const SHOWCASE_SEED = 20261130;
