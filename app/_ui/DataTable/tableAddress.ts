/** What a person set on a table; kept in the page's address, so it can be sent and comes back. */
export interface TableState {
  readonly search: string;
  readonly sort: { readonly key: string; readonly descending: boolean } | null;
  /** Column key to the word it must have. */
  readonly choices: Readonly<Record<string, string>>;
  /** Keys of the columns shown; null is the table's own choice. */
  readonly columns: readonly string[] | null;
}

interface Params {
  get(name: string): string | null;
  entries(): IterableIterator<[string, string]>;
}

function readSort(text: string | null): TableState["sort"] {
  const match = /^(.+)\.(asc|desc)$/.exec(text ?? "");
  return match?.[1] === undefined ? null : { key: match[1], descending: match[2] === "desc" };
}

/** Reads a table's part of the address; parameters begin with the table's id. */
export function readAddress(id: string, params: Params): TableState {
  const choices: Record<string, string> = {};
  const prefix = `${id}.is.`;
  for (const [name, value] of params.entries())
    if (name.startsWith(prefix)) choices[name.slice(prefix.length)] = value;
  return {
    search: params.get(`${id}.q`) ?? "",
    sort: readSort(params.get(`${id}.sort`)),
    choices,
    columns: params.get(`${id}.cols`)?.split(",").filter(Boolean) ?? null,
  };
}

/** The address with a table's part replaced; everything else stays. */
export function writeAddress(id: string, current: string, state: TableState): string {
  const params = new URLSearchParams(current);
  for (const name of [...params.keys()]) if (name.startsWith(`${id}.`)) params.delete(name);
  if (state.search !== "") params.set(`${id}.q`, state.search);
  if (state.sort) params.set(`${id}.sort`, `${state.sort.key}.${state.sort.descending ? "desc" : "asc"}`);
  for (const [key, word] of Object.entries(state.choices)) if (word) params.set(`${id}.is.${key}`, word);
  if (state.columns) params.set(`${id}.cols`, state.columns.join(","));
  return params.toString();
}
