import type { HeldTables, PartRow } from "@/seed/tables";

type RowOf<T extends keyof HeldTables> = HeldTables[T][number];

/** A scenario looked at from one site: its own rows, and everything by id. */
export interface SiteView {
  readonly site: RowOf<"Site">;
  readonly tables: HeldTables;
  readonly lines: ReadonlyMap<string, RowOf<"Line">>;
  /** Machines of the site in order. */
  readonly machines: readonly RowOf<"Machine">[];
  readonly machine: ReadonlyMap<string, RowOf<"Machine">>;
  readonly controller: ReadonlyMap<string, RowOf<"Controller">>;
  readonly part: ReadonlyMap<string, PartRow>;
  readonly position: ReadonlyMap<string, RowOf<"Position">>;
}

const byId = <T extends { readonly id: string }>(rows: readonly T[]): Map<string, T> =>
  new Map(rows.map((row) => [row.id, row]));

export function viewSite(tables: HeldTables, code: string): SiteView {
  const site = tables.Site.find((one) => one.code === code);
  if (!site) throw new RangeError(`code must be a site of the scenario, got ${code}`);
  const lines = byId(tables.Line.filter(({ siteId }) => siteId === site.id));
  const place = ({ lineId, code: machine }: RowOf<"Machine">) => `${lines.get(lineId)?.code} ${machine}`;
  const machines = tables.Machine.filter(({ lineId }) => lines.has(lineId)).sort((a, b) =>
    place(a) < place(b) ? -1 : 1,
  );
  return {
    site,
    tables,
    lines,
    machines,
    machine: byId(machines),
    controller: byId(tables.Controller),
    part: byId(tables.Part),
    position: byId(tables.Position),
  };
}

/** Line and machine code of a machine of the site. */
export function placeOf(view: SiteView, machineId: string | null) {
  const machine = view.machine.get(machineId ?? "");
  return {
    lineCode: view.lines.get(machine?.lineId ?? "")?.code ?? null,
    machineCode: machine?.code ?? null,
  };
}

/** A part number as on the nameplate: with its hardware level. */
export function plateNumber(part: PartRow | undefined, revision: string | null): string | null {
  if (!part) return null;
  return revision ? `${part.number}-${revision}` : part.number;
}
