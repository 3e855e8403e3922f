import { quarterWords } from "@/lib/view/limitWords";
import { knownWords, moneyNorm, normWords } from "@/lib/view/lineScope";
import { plainNumber } from "@/lib/view/number";
import type { BoardLine, BoardPage, Considered } from "@/lib/view/planBoard";
import { figureWords, kindWords } from "@/lib/view/planInputs";

/** A table of a document: what stands on the page stands in the file. */
export interface DocTable {
  readonly title: string;
  readonly columns: readonly { readonly title: string; readonly kind: "text" | "number" | "date" }[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

const text = (title: string) => ({ title, kind: "text" as const });
const number = (title: string) => ({ title, kind: "number" as const });
const date = (title: string) => ({ title, kind: "date" as const });
/** Estimates stand in whole euros, on the page and in the file alike. */
const whole = (value: number | null): number | null => (value === null ? null : Math.round(value));

/** The tables of a plan's capital request, in the order of the document. */
export function requestTables(page: BoardPage): DocTable[] {
  return [
    sumTable(page),
    yearTable(page),
    choiceTable(page),
    cashTable(page),
    belowTable(page),
    decisionTable(page),
    assumptionTable(page),
  ].filter(({ rows }) => rows.length > 0);
}

function sumTable({ view: { worth, horizonMonths, discountRate } }: BoardPage): DocTable {
  return {
    title: "What the plan is worth",
    columns: [text("What"), number("EUR")],
    rows: [
      [`Loss of the group over ${horizonMonths} months without the plan`, whole(worth.lossWithout)],
      ["The same with the plan", whole(worth.lossWith)],
      ["Less loss by the plan", whole(worth.worth)],
      ["Of the loss with it: hours lost by the work itself", whole(worth.workLoss)],
      ["Of the loss with it: stops of what is put in", whole(worth.residual)],
      ["Money spent, typical", whole(worth.spent)],
      [
        `Money spent, of the as-of day at ${plainNumber(discountRate * 100, 1)} % a year`,
        whole(worth.spentDiscounted),
      ],
      ["Less loss after the money spent", whole(worth.worth - worth.spentDiscounted)],
    ],
  };
}

function yearTable({ view: { years } }: BoardPage): DocTable {
  return {
    title: "Money by year",
    columns: [
      number("Year"),
      number("Budget EUR"),
      number("Less reserve EUR"),
      number("Requested EUR"),
      number("Left EUR"),
    ],
    rows: years.map(({ year, budget, most, spent }) => [
      ...[year, whole(budget), whole(most), whole(spent)],
      most === null ? null : whole(most - spent),
    ]),
  };
}

function choiceTable({ view: { lines, inputs } }: BoardPage): DocTable {
  return {
    title: "What is requested",
    columns: [
      ...[text("Line"), text("Name"), text("Site"), text("Way"), text("Where"), date("From"), date("To")],
      ...[
        number("Low EUR"),
        number("Typical EUR"),
        number("High EUR"),
        text("Currency"),
        number("Typical, local"),
      ],
      ...[date("Order by"), date("Begin by")],
    ],
    rows: lines.flatMap((line) =>
      line.placed.map((placed) => {
        const site = inputs.sites.find(({ id }) => id === line.siteId);
        const rate = inputs.rates.find(({ currency }) => currency === site?.currency)?.perEuro ?? null;
        const { low, typical, high } = placed.cost;
        return [
          ...[
            line.code,
            line.name,
            site?.code ?? "",
            placed.name,
            placed.slotName,
            placed.startsOn,
            placed.endsOn,
          ],
          ...[whole(low), whole(typical), whole(high), site?.currency ?? "EUR"],
          ...[rate === null ? null : whole(typical * rate), placed.orderBy, placed.startBy],
        ];
      }),
    ),
  };
}

function cashTable({ view: { cash } }: BoardPage): DocTable {
  const currencies = [...new Set(cash.flatMap(({ local }) => Object.keys(local)))].sort();
  return {
    title: "Cash by quarter",
    columns: [text("Quarter"), number("All, EUR"), ...currencies.map((one) => number(`In ${one}`))],
    rows: cash.map(({ quarterId, euros, local }) => [
      quarterWords(quarterId),
      whole(euros),
      ...currencies.map((one) => whole(local[one] ?? 0)),
    ]),
  };
}

function belowTable({ below }: BoardPage): DocTable {
  return {
    title: "Just below the funding line",
    columns: [
      number("Rank"),
      text("Line"),
      text("What would be done"),
      number("Cost EUR"),
      number("Would add EUR"),
      text("Would need"),
    ],
    rows: below.map(({ rank, code, way, needs }) => [
      ...[rank, code, way?.words ?? "no way can be finished within the plan"],
      ...[whole(way?.cost ?? null), whole(way?.addedWorth ?? null)],
      needs.map(({ what, numbers }) => (numbers ? `${what}: ${numbers}` : what)).join("; "),
    ]),
  };
}

function decisionTable({ view: { lines, broken } }: BoardPage): DocTable {
  const pinned = lines.filter(({ pin }) => pin !== "none");
  const held = lines.flatMap(({ code, acceptance }) => (acceptance ? [{ code, ...acceptance }] : []));
  return {
    title: "Decided by hand, risk held, limits not kept",
    columns: [text("What"), text("Line"), text("Who"), text("Why or until")],
    rows: [
      ...pinned.map((line) => [`pinned ${line.pin}`, line.code, line.pinnedBy ?? "", line.pinReason ?? ""]),
      ...held.map(({ code, acceptedBy, until }) => ["risk held", code, acceptedBy, `until ${until}`]),
      ...broken.map(({ what, numbers }) => [
        "limit not kept",
        "",
        "",
        numbers ? `${what}: ${numbers}` : what,
      ]),
    ],
  };
}

const STATED = [
  "site_cap",
  "reserve",
  "discount",
  "horizon",
  "worth_per_euro",
  "sign_off_above",
  "sign_off_weeks",
] as const;

function assumptionTable({ view }: BoardPage): DocTable {
  const { inputs, windowFill, engine, dataVersion, assumptions } = view;
  const stated = STATED.flatMap((kind) => inputs.figures.filter((figure) => figure.kind === kind));
  return {
    title: "Assumptions and inputs",
    columns: [text("What"), text("Value"), text("Unit"), text("Source"), text("Owner"), date("Stated on")],
    rows: [
      ...stated.map((figure) => {
        const { name, unit } = kindWords(figure.kind);
        return [name, figureWords(figure), unit, figure.source, figure.owner, figure.statedOn];
      }),
      ...inputs.rates
        .filter(({ currency }) => currency !== "EUR")
        .map(({ currency, perEuro, validFrom }) => [
          ...[
            `Budget rate ${currency}`,
            String(perEuro),
            "for one EUR",
            "Budget rates",
            "Group finance",
            validFrom,
          ],
        ]),
      [
        "Share of a window that is planned",
        plainNumber(windowFill * 100),
        "%",
        "Norms of the scope",
        "",
        null,
      ],
      [
        "Loss figures",
        `engine ${engine}, data version ${dataVersion}, assumptions ${assumptions}`,
        "",
        "",
        "",
        null,
      ],
    ],
  };
}

/** The tables of one line's request: what is asked, when it is paid, and what else was considered. */
export function lineTables(line: BoardLine, considered: Considered | undefined): DocTable[] {
  return [askedTable(line), lineCashTable(line), consideredTable(line, considered)];
}

function askedTable({ code, placed }: BoardLine): DocTable {
  const money = [number("Low EUR"), number("Typical EUR"), number("High EUR")];
  return {
    title: `${code}: requested`,
    columns: [
      ...[text("Way"), text("Where"), date("From"), date("To"), ...money],
      ...[date("Order by"), date("Begin by")],
    ],
    rows: placed.map(({ name, slotName, startsOn, endsOn, cost, orderBy, startBy }) => [
      ...[name, slotName, startsOn, endsOn, whole(cost.low), whole(cost.typical), whole(cost.high)],
      ...[orderBy, startBy],
    ]),
  };
}

function lineCashTable({ code, placed }: BoardLine): DocTable {
  const cash = new Map<string, number>();
  for (const { phasing } of placed)
    for (const { quarterId, euros } of phasing) cash.set(quarterId, (cash.get(quarterId) ?? 0) + euros);
  return {
    title: `${code}: cash by quarter`,
    columns: [text("Quarter"), number("EUR")],
    rows: [...cash]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([id, euros]) => [quarterWords(id), whole(euros)]),
  };
}

function consideredTable({ code }: BoardLine, considered: Considered | undefined): DocTable {
  return {
    title: `${code}: ways considered`,
    columns: [
      ...[text("Way"), text("What it is good for"), text("Cost EUR")],
      ...[text("Work, weeks"), text("Lead, weeks"), text("In the way")],
    ],
    rows: (considered?.options ?? []).map(({ name, purpose, cost, weeks, lead, blockers }) => [
      ...[name, purpose, knownWords(cost, moneyNorm), knownWords(weeks, (value) => normWords(value, 1))],
      knownWords(lead, (value) => plainNumber(value)),
      blockers.length === 0 ? "nothing on record" : blockers.join("; "),
    ]),
  };
}

/** The tables of a plan's request as sheets of a workbook, those of each line after those of the plan. */
export function requestSheets(page: BoardPage) {
  const lines = page.view.lines
    .filter(({ placed }) => placed.length > 0)
    .flatMap((line) =>
      lineTables(
        line,
        page.considered.find(({ lineId }) => lineId === line.lineId),
      ),
    );
  const tables = [...requestTables(page), ...lines].filter(({ rows }) => rows.length > 0);
  return tables.map(({ title, columns, rows }) => ({
    name: title.replaceAll(/[\\/?*[\]:]/g, ""),
    columns,
    rows,
  }));
}
