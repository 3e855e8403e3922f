/** Entities a register file can bring in, in the order they are written: parents first. */
export const ENTITIES = [
  "CurrencyRate",
  "Site",
  "Line",
  "Controller",
  "Machine",
  "Panel",
  "Network",
  "Axis",
  "Family",
  "Part",
  "PartAlias",
  "Successor",
  "LifecycleFact",
  "Position",
  "Unit",
  "Placement",
  "StockLot",
  "Event",
  "Backup",
  "Contact",
  "ShutdownWindow",
  "Sighting",
] as const;

export type Entity = (typeof ENTITIES)[number];

/** What is kept of a cell once read; dates as YYYY-MM-DD, instants as ISO 8601 with zone. */
export type Kept = string | number | boolean | null;

/** What one row of a file says about one stored thing. Pure data: nothing is known yet of what is stored. */
export interface Intent {
  readonly entity: Entity;
  /** Natural key of the thing: what people call it, never an id. */
  readonly key: string;
  /** Field that holds a parent's id → that parent's entity and natural key. */
  readonly parents: Readonly<Record<string, { readonly entity: Entity; readonly key: string }>>;
  /** Fields the row states. A field the row leaves empty is not here and so is not changed. */
  readonly values: Readonly<Record<string, Kept>>;
  /** Fields a new thing needs besides. An existing one keeps its own. */
  readonly whenNew: Readonly<Record<string, Kept>>;
  /** Fields that add up where two rows speak of one thing, as pieces of two valuation types in one bin do. */
  readonly adds?: readonly string[];
  readonly rowNumber: number;
}

/** Natural key from its parts; the separator occurs in no code or part number. */
export function keyOf(...parts: readonly (string | null)[]): string {
  return parts.map((part) => part ?? "").join("\u241F");
}
