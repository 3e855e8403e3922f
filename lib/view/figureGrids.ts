import type { PlanFigureKind } from "@/lib/schema/planInputs";
import {
  type FigureKey,
  figureAt,
  type InputDuty,
  type InputSite,
  kindWords,
  type PlanFigure,
  type PlanInputs,
} from "@/lib/view/planInputs";
import { day } from "@/lib/view/time";

/** A place where a figure stands or could. */
export interface FigureCell {
  readonly key: FigureKey;
  /** Row and column in words, for the form's title. */
  readonly name: string;
  readonly figure: PlanFigure | null;
  readonly missing: string;
  readonly writes: boolean;
  /** Offered while none is stated. */
  readonly currency: string | null;
}

export interface FigureRow {
  readonly head: string;
  readonly note: string | null;
  readonly unit: string;
  readonly cells: readonly FigureCell[];
}

export interface FigureGrid {
  readonly id: string;
  readonly title: string;
  readonly lead: string;
  readonly columns: readonly string[];
  readonly rows: readonly FigureRow[];
}

type Basis = Pick<
  PlanInputs,
  "figures" | "years" | "sites" | "regions" | "duties" | "seesGroup" | "writesGroup"
>;

const KEY = { siteId: null, regionId: null, obligationId: null, year: null } as const;

function cell(
  { figures }: Basis,
  given: Partial<FigureKey> & Pick<FigureKey, "kind">,
  rest: { readonly name: string; readonly writes: boolean; readonly currency?: string | null },
): FigureCell {
  const { missing } = kindWords(given.kind);
  return { key: { ...KEY, ...given }, figure: figureAt(figures, given), missing, currency: null, ...rest };
}

/** The figures plans are made with, as tables to read and to fill; what nobody stated says what follows. */
export function figureGrids(inputs: Basis): FigureGrid[] {
  const grids = [moneyGrid(inputs), ruleGrid(inputs), weekGrid(inputs), handGrid(inputs), dutyGrid(inputs)];
  return grids.filter(({ rows }) => rows.length > 0);
}

function moneyGrid(inputs: Basis): FigureGrid {
  const { years, sites, seesGroup, writesGroup } = inputs;
  const row = (head: string, site: InputSite | null): FigureRow => ({
    ...{
      head,
      unit: site?.currency ?? "EUR",
      note: site ? "where nothing is stated, the site's cap alone holds" : null,
    },
    cells: years.map((year) =>
      cell(
        inputs,
        { kind: "budget", siteId: site?.id ?? null, year },
        {
          name: `Budget ${year}, ${head}`,
          writes: site ? site.writes : writesGroup,
          currency: site?.currency ?? "EUR",
        },
      ),
    ),
  });
  return {
    ...{ id: "money", title: "Money by year", columns: years.map(String) },
    lead: "Capital for retrofits. Money not spent in its year is lost, so nothing is carried over. Other currencies count at the budget rate below.",
    rows: [
      ...(seesGroup ? [row("Group", null)] : []),
      ...sites.map((site) => row(`${site.code} ${site.name}`, site)),
    ],
  };
}

const RULES: readonly PlanFigureKind[] = [
  "site_cap",
  "reserve",
  "discount",
  "horizon",
  "worth_per_euro",
  "sign_off_above",
  "sign_off_weeks",
];

function ruleGrid(inputs: Basis): FigureGrid {
  const kinds = RULES.filter((kind) => inputs.seesGroup || kind !== "sign_off_above");
  return {
    ...{ id: "rules", title: "Rules of the group", columns: ["Value"] },
    lead: "What every plan of the group is held to and judged by.",
    rows: kinds.map((kind) => {
      const { name, unit } = kindWords(kind);
      const currency = kind === "sign_off_above" ? "EUR" : null;
      return {
        ...{ head: name, unit, note: null },
        cells: [cell(inputs, { kind }, { name, writes: inputs.writesGroup, currency })],
      };
    }),
  };
}

function weekGrid(inputs: Basis): FigureGrid {
  const { years, sites } = inputs;
  const kind = "engineer_weeks";
  return {
    ...{ id: "weeks", title: "Engineer-weeks by year", columns: years.map(String) },
    lead: "What the site's own controls engineers can give to projects: survey, a quarter of the engineering, half of commissioning and validation; those shares are common practice, no source.",
    rows: sites.map(({ id, code, name, writes }) => ({
      ...{ head: `${code} ${name}`, unit: "weeks", note: null },
      cells: years.map((year) =>
        cell(inputs, { kind, siteId: id, year }, { name: `Engineer-weeks ${year}, ${code}`, writes }),
      ),
    })),
  };
}

function handGrid(inputs: Basis): FigureGrid {
  const { regions, sites, writesGroup } = inputs;
  return {
    ...{ id: "hands", title: "Crews and weekends", columns: ["Value"] },
    lead: "Integrator crews by region, and the hours of a weekend in which work can be done.",
    rows: [
      ...regions.map(({ id, name, sites: codes }) => ({
        ...{ head: name, unit: "crews", note: codes.join(", ") },
        cells: [
          cell(inputs, { kind: "crews", regionId: id }, { name: `Crews, ${name}`, writes: writesGroup }),
        ],
      })),
      ...sites.map(({ id, code, writes }) => ({
        ...{ head: `Weekend at ${code}`, unit: "h", note: null },
        cells: [
          cell(inputs, { kind: "weekend_hours", siteId: id }, { name: `Weekend hours, ${code}`, writes }),
        ],
      })),
    ],
  };
}

function dutyGrid(inputs: Basis): FigureGrid {
  const { sites } = inputs;
  const row = (duty: InputDuty): FigureRow => {
    const site = sites.find(({ id }) => id === duty.siteId);
    const make = (kind: PlanFigureKind, currency: string | null) =>
      cell(
        inputs,
        { kind, obligationId: duty.id },
        { name: `${kindWords(kind).name}: ${duty.title}`, writes: site?.writes ?? false, currency },
      );
    return {
      head: `${duty.lineCode ?? duty.siteCode}: ${duty.title}`,
      note: `${duty.kind === "safety" ? "Safety" : "Legal"} date ${day(duty.dueOn)}${duty.project ? `; project ${duty.project} is at it` : ""}`,
      unit: "",
      cells: [make("duty_cost", site?.currency ?? "EUR"), make("duty_hours", null), make("duty_weeks", null)],
    };
  };
  return {
    ...{
      id: "duties",
      title: "Must be done",
      columns: ["Cost", "Hours in a shutdown", "Weeks until parts are here"],
    },
    lead: "Safety and legal duties come before every other use of the money; no loss is weighed against them. A duty with a running project takes no money from a plan.",
    rows: inputs.duties.map(row),
  };
}
