/** What a column of a saved list holds. A share is in [0, 1]; JSON comes as its text. */
export type ExportKind =
  | "id"
  | "text"
  | "number"
  | "money"
  | "share"
  | "date"
  | "instant"
  | "yes-no"
  | "json";

/** A column of a list that is saved as a file. */
export interface ExportColumn {
  /** Name by which programs find it, as in JSON. */
  readonly key: string;
  readonly title: string;
  readonly kind: ExportKind;
  readonly unit?: string;
  /** Of money: an ISO 4217 code, or `of:` and the key of the column that holds it. */
  readonly currency?: string;
}

/** Null is not known. A day is `YYYY-MM-DD`, an instant RFC 3339 in UTC. */
export type ExportCell = string | number | boolean | null;
export type ExportRow = readonly ExportCell[];

/** A list with its rows, which come while they are read. */
export interface ExportTable {
  readonly name: string;
  readonly title: string;
  readonly columns: readonly ExportColumn[];
  readonly rows: AsyncIterable<ExportRow>;
}

export const EXPORT_FORMATS = ["csv", "xlsx", "json"] as const;
export type ExportFormat = (typeof EXPORT_FORMATS)[number];

/** Head of a column for people: its title with its unit. */
export function exportHead({ title, kind, unit, currency }: ExportColumn): string {
  const told = unit ?? (kind === "instant" ? "UTC" : currency?.startsWith("of:") ? undefined : currency);
  return told === undefined ? title : `${title}, ${told}`;
}

/** ISO code of the money in a cell; undefined where the row does not say. */
export function currencyIn(
  { currency }: ExportColumn,
  row: ExportRow,
  columns: readonly ExportColumn[],
): string | undefined {
  if (currency === undefined || !currency.startsWith("of:")) return currency;
  const told = row[columns.findIndex(({ key }) => key === currency.slice(3))];
  return typeof told === "string" ? told : undefined;
}
