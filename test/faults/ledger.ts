/** What the installation said it has done, kept outside of it. */
export interface Ledger {
  /** Texts of the events that were acknowledged, by their id. */
  readonly events: Map<string, string>;
  /** Pieces each lot was last said to hold, and how many changes of it were acknowledged. */
  readonly lots: Map<string, { readonly quantity: number; readonly changes: number }>;
  /** Batches that were said to be loaded, with the name of their file. */
  readonly imports: Map<string, string>;
  /** Names of the reports that were asked for. */
  readonly reports: Set<string>;
  /** Searches that were said to have been started. */
  readonly searches: Set<string>;
  /** What is under way, by who does it. */
  readonly underWay: Map<string, string>;
}

export function newLedger(): Ledger {
  return {
    ...{ events: new Map(), lots: new Map(), imports: new Map() },
    ...{ reports: new Set(), searches: new Set(), underWay: new Map() },
  };
}

/** How much was acknowledged. */
export function countsOf({ events, lots, imports, reports, searches }: Ledger) {
  const changes = [...lots.values()].reduce((sum, lot) => sum + lot.changes, 0);
  return {
    ...{ events: events.size, changes, imports: imports.size },
    ...{ reports: reports.size, searches: searches.size },
  };
}

export type Counts = ReturnType<typeof countsOf>;
