import "server-only";
import type { ExportColumn, ExportKind } from "@/lib/view/exportTable";

/** A column that is read from a stored row, by the way through its relations such as `part.number`. */
export interface PathColumn extends ExportColumn {
  readonly path: string;
}

const keyOf = (path: string) => path.replace(/\.(\w)/g, (_, letter: string) => letter.toUpperCase());

const column =
  (kind: ExportKind) =>
  (path: string, title: string, unit?: string): PathColumn => ({
    ...{ path, key: keyOf(path), title, kind },
    ...(unit === undefined ? {} : { unit }),
  });

export const text = column("text");
export const number = column("number");
export const share = column("share");
export const date = column("date");
export const instant = column("instant");
export const yesNo = column("yes-no");
export const json = column("json");

/** The row's own id, or that of what it points to. */
export const id = (path = "id", title = "Id"): PathColumn => column("id")(path, title);

/** Money in a currency such as EUR, or in that of the column at another path. */
export function money(path: string, title: string, currency: string): PathColumn {
  const told = /^[A-Z]{3}$/.test(currency) ? currency : `of:${keyOf(currency)}`;
  return { ...column("money")(path, title), currency: told };
}

/** Maker and number of a part, with its id. */
export const part = (path = "part"): PathColumn[] => [
  text(`${path}.maker`, "Maker"),
  text(`${path}.number`, "Part number"),
  id(`${path}.id`, "Part id"),
];

/** Code of a site, with its id. */
export const site = (path = "site"): PathColumn[] => [
  text(`${path}.code`, "Site"),
  id(`${path}.id`, "Site id"),
];

/** Code of a line, with its id. */
export const line = (path = "line"): PathColumn[] => [
  text(`${path}.code`, "Line"),
  id(`${path}.id`, "Line id"),
];

export const project = (path = "project"): PathColumn[] => [
  text(`${path}.code`, "Project"),
  id(`${path}.id`, "Project id"),
];
