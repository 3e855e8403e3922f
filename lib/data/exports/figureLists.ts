import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { type FigureList, figureList } from "@/lib/data/exports/figureList";
import { readParts } from "@/lib/data/partList";
import { readProjectList } from "@/lib/data/projectList";
import { readRanking } from "@/lib/data/ranking";
import { readSpares } from "@/lib/data/spares";
import { readSpend } from "@/lib/data/spend";
import { readStockLevels } from "@/lib/data/stockLevels";
import { readCareLots } from "@/lib/data/storageCare";
import { datesAhead } from "@/lib/view/datesAhead";
import { readBudget, type SpendStep } from "@/lib/view/spend";
import { bySurplus, readTarget, surplusEuro, surplusOf, surplusReason } from "@/lib/view/stockLevels";

const DEFAULT_BUDGET = "50000";

/** Lists that are computed for a day, as their pages show them. */
export const figureLists: readonly FigureList[] = [
  figureList({
    ...{ name: "lines", title: "Lines by what a stop costs", about: "The ranking of lines", page: "/lines" },
    read: async (actor: Actor, { asOf, asked }) =>
      (await readRanking(actor, asOf)).lines.filter(atAskedSite(asked.get("site"))),
    columns: [
      ["id", "id", "Id", ({ id }) => id],
      ["site", "text", "Site", ({ siteCode }) => siteCode],
      ["code", "text", "Line", ({ code }) => code],
      ["name", "text", "Name", ({ name }) => name],
      ["rankByLoss", "number", "Place in the group by loss", (line) => line.rankByLoss],
      ["rankByScore", "number", "Place in the group by score", (line) => line.rankByScore],
      ["score", "number", "Score, 0 to 100", ({ score }) => score],
      ["scoreStage", "number", "Score of supply", ({ scoreParts }) => scoreParts.stage],
      ["scoreSpares", "number", "Score of spares", ({ scoreParts }) => scoreParts.spares],
      ["scoreRepair", "number", "Score of repair", ({ scoreParts }) => scoreParts.repair],
      ["stopLoss", "EUR", "Stop loss a year", ({ stopLoss }) => stopLoss?.mean ?? null],
      ["stopLossLow", "EUR", "Stop loss, low (5 %)", ({ stopLoss }) => stopLoss?.low ?? null],
      ["stopLossHigh", "EUR", "Stop loss, high (95 %)", ({ stopLoss }) => stopLoss?.high ?? null],
      ["baseLoss", "EUR", "Base part", ({ baseLoss }) => baseLoss],
      ["shortageLoss", "EUR", "Shortage part", ({ shortageLoss }) => shortageLoss],
      ["stopsPerYear", "number", "Stops a year", ({ stopsPerYear }) => stopsPerYear],
      ["depletionP80", "date", "Spares likely used up (80 %)", ({ depletionP80 }) => depletionP80],
      ["worstStage", "text", "Worst supply stage", ({ worstStage }) => worstStage],
      ["costPerHour", "EUR", "Cost of a stop per hour", ({ cost }) => cost.perHour],
      ["costEvidence", "text", "Evidence of the cost", ({ cost }) => cost.evidence],
    ],
  }),
  figureList({
    ...{
      name: "parts",
      title: "Parts",
      about: "All parts with dates, stock and chance of no spare",
      page: "/parts",
    },
    read: (actor: Actor, { asOf }) => readParts(actor, asOf),
    columns: [
      ["id", "id", "Id", ({ id }) => id],
      ["maker", "text", "Maker", ({ maker }) => maker],
      ["number", "text", "Number", ({ number }) => number],
      ["description", "text", "Description", ({ description }) => description],
      ["itemClass", "text", "Class", ({ itemClass }) => itemClass],
      ["family", "text", "Family", ({ family }) => family],
      ["stage", "text", "Supply stage", ({ stage }) => stage],
      ["lastOrderOn", "date", "Last order", ({ lastOrderOn }) => lastOrderOn],
      ["installedHere", "number", "Installed at your sites", ({ installedHere }) => installedHere],
      ["installed", "number", "Installed in the group", ({ installed }) => installed],
      ["book", "number", "Pieces by the book", ({ book }) => book],
      ["usable", "number", "Expected to work", ({ usable }) => usable],
      ["noSpare", "share", "Chance of no spare, 12 months", ({ noSpare }) => noSpare?.mean ?? null],
      ["noSpareLow", "share", "Chance, low", ({ noSpare }) => noSpare?.low ?? null],
      ["noSpareHigh", "share", "Chance, high", ({ noSpare }) => noSpare?.high ?? null],
      ["depletionP80", "date", "Shelf likely empty (80 %)", ({ depletionP80 }) => depletionP80],
    ],
  }),
  figureList({
    ...{ name: "spares", title: "Spares", about: "The weekly look at spares", page: "/spares" },
    read: async (actor: Actor, { asOf }) => (await readSpares(actor, asOf)).pools,
    columns: [
      ["partId", "id", "Part id", ({ partId }) => partId],
      ["maker", "text", "Maker", ({ maker }) => maker],
      ["number", "text", "Part number", ({ number }) => number],
      ["description", "text", "Description", ({ description }) => description],
      ["itemClass", "text", "Class", ({ itemClass }) => itemClass],
      ["family", "text", "Family", ({ family }) => family?.name ?? null],
      ["stage", "text", "Supply stage", ({ stage }) => stage],
      ["installed", "number", "Installed", ({ installed }) => installed],
      ["book", "number", "Pieces by the book", ({ book }) => book],
      ["usable", "number", "Expected to work", ({ usable }) => usable],
      ["removalRate", "number", "Removals per unit-year", ({ removalRate }) => removalRate],
      ["removalsPerYear", "number", "Removals a year", (pool) => pool.removalsPerYear],
      ["noSpare", "share", "Chance of no spare, 12 months", ({ noSpare }) => noSpare.mean],
      ["noSpareLow", "share", "Chance, low", ({ noSpare }) => noSpare.low],
      ["noSpareHigh", "share", "Chance, high", ({ noSpare }) => noSpare.high],
      ["depletionP50", "date", "Shelf empty (50 %)", ({ depletionP50 }) => depletionP50],
      ["depletionP80", "date", "Shelf empty (80 %)", ({ depletionP80 }) => depletionP80],
      ["repairsOut", "number", "Out for repair", ({ repairsOut }) => repairsOut],
      ["repairsOverdue", "number", "Repairs overdue", (pool) => pool.repairsOverdue],
    ],
  }),
  figureList({
    ...{ name: "dates", title: "Dates ahead", about: "Days that bind somebody", page: "/dates" },
    read: async (actor: Actor, { asOf }) => datesAhead(await readDatesAhead(actor, asOf)),
    columns: [
      ["key", "id", "Id", ({ key }) => key],
      ["kind", "text", "Kind", ({ kind }) => kind],
      ["on", "date", "On", ({ on }) => on],
      ["what", "text", "What", ({ what }) => what],
      ["of", "text", "Of", ({ of }) => of],
      ["sites", "text", "Sites", ({ sites }) => sites.join(", ")],
      ["units", "number", "Units", ({ units }) => units],
      ["overdue", "yes-no", "Overdue", ({ overdue }) => overdue],
    ],
  }),
  figureList({
    ...{ name: "projects", title: "Projects", about: "Projects with money and progress", page: "/projects" },
    read: (actor: Actor, { asOf }) => readProjectList(actor, asOf),
    columns: [
      ["id", "id", "Id", ({ id }) => id],
      ["code", "text", "Project", ({ code }) => code],
      ["name", "text", "Name", ({ name }) => name],
      ["status", "text", "Status", ({ status }) => status],
      ["site", "text", "Site", ({ siteCode }) => siteCode],
      ["line", "text", "Line", ({ lineCode }) => lineCode],
      ["budget", "of:currency", "Budget with changes", ({ budget }) => Number(budget)],
      ["paid", "of:currency", "Paid", ({ paid }) => Number(paid)],
      ["open", "of:currency", "Ordered, not paid", ({ open }) => Number(open)],
      [
        "forecast",
        "of:currency",
        "Expected in the end",
        ({ forecast }) => (forecast === null ? null : Number(forecast)),
      ],
      ["currency", "text", "Currency", ({ currency }) => currency],
      ["planned", "share", "Planned", ({ plannedShare }) => plannedShare],
      ["earned", "share", "Earned", ({ earnedShare }) => earnedShare],
      ["cpi", "number", "Cost index", ({ cpi }) => cpi],
      ["spi", "number", "Schedule index", ({ spi }) => spi],
      ["overrun", "text", "Overrun", ({ overrun }) => overrun],
      ["startsOn", "date", "Starts", ({ startsOn }) => startsOn],
      ["endsOn", "date", "Ends", ({ endsOn }) => endsOn],
      ["gate", "text", "Next gate", ({ gate }) => gate],
      ["gateOn", "date", "Gate on", ({ gateOn }) => gateOn],
    ],
  }),
  figureList({
    ...{ name: "care-due", title: "Storage care due", about: "Lots that wait for care", page: "/care" },
    read: (actor: Actor, { asOf }) => readCareLots(actor, asOf),
    columns: [
      ["lotId", "id", "Lot id", ({ lotId }) => lotId],
      ["site", "text", "Site", ({ siteCode }) => siteCode],
      ["bin", "text", "Bin", ({ bin }) => bin],
      ["partId", "id", "Part id", ({ partId }) => partId],
      ["part", "text", "Part number", ({ part }) => part],
      ["revision", "text", "Revision", ({ revision }) => revision],
      ["state", "text", "State", ({ state }) => state],
      ["quantity", "number", "Pieces", ({ quantity }) => quantity],
      ["kind", "text", "Care", ({ kind }) => kind],
      ["everyMonths", "number", "Every, months", ({ everyMonths }) => everyMonths],
      ["lastOn", "date", "Last on", ({ lastOn }) => lastOn],
      ["dueOn", "date", "Due on", ({ dueOn }) => dueOn],
      ["care", "text", "Stands", ({ care }) => care],
    ],
  }),
  figureList({
    ...{ name: "surplus", title: "Surplus", about: "Pieces beyond those to keep", page: "/levels" },
    read: async (actor: Actor, { asOf, asked }) => {
      const rows = await readStockLevels(actor, { asOf, target: readTarget(asked.get("target")) });
      return bySurplus(rows).map((row) => ({ ...row, reason: surplusReason(row, asOf) }));
    },
    columns: [
      ["site", "text", "Site", ({ siteCode }) => siteCode],
      ["partId", "id", "Part id", ({ partId }) => partId],
      ["part", "text", "Part", ({ part }) => part],
      ["description", "text", "Description", ({ description }) => description],
      ["surplus", "number", "Surplus, pieces", (row) => surplusOf(row)],
      ["book", "number", "Book, pieces", ({ book }) => book],
      ["usable", "number", "Usable, pieces", ({ usable }) => Number(usable.toFixed(2))],
      ["keep", "number", "Keep, pieces", ({ levels }) => levels.keep],
      ["installedHere", "number", "Installed here", ({ units }) => units],
      ["installed", "number", "Installed in the group", ({ unitsInGroup }) => unitsInGroup],
      ["price", "of:currency", "Price a piece", ({ price }) => (price === null ? null : Number(price))],
      ["currency", "text", "Currency", ({ priceCurrency }) => priceCurrency],
      ["pricedOn", "date", "Price date", ({ pricedOn }) => pricedOn],
      ["value", "EUR", "Value", (row) => surplusEuro(row)],
      ["why", "text", "Why", ({ reason }) => reason],
    ],
  }),
  figureList({
    ...{ name: "spend", title: "Where to spend next", about: "Pieces a budget buys", page: "/spend" },
    read: async (actor: Actor, { asOf, asked }): Promise<readonly SpendStep[]> => {
      const budget = readBudget(asked.get("budget") ?? DEFAULT_BUDGET) ?? 0;
      return (await readSpend(actor, { asOf, budget })).steps;
    },
    columns: [
      ["place", "number", "Place", ({ place }) => place],
      ["partId", "id", "Part id", ({ partId }) => partId],
      ["part", "text", "Part", ({ number }) => number],
      ["maker", "text", "Maker", ({ maker }) => maker],
      ["site", "text", "For the shelf of", ({ siteCode }) => siteCode],
      ["price", "of:currency", "Price", ({ price }) => Number(price.amount)],
      ["currency", "text", "Currency", ({ price }) => price.currency],
      ["pricedOn", "date", "Priced on", ({ price }) => price.pricedOn],
      ["unitCost", "EUR", "Price at the budget rate", ({ unitCost }) => unitCost],
      ["avoids", "EUR", "Avoids over the horizon", ({ avoids }) => avoids],
      ["spent", "EUR", "Spent so far", ({ spent }) => spent],
      ["avoided", "EUR", "Avoided so far", ({ avoided }) => avoided],
      ["arrivesOn", "date", "Arrives on", ({ arrivesOn }) => arrivesOn],
      ["lastOrderOn", "date", "Last order on", ({ lastOrderOn }) => lastOrderOn],
    ],
  }),
];

const atAskedSite = (code: string | undefined) => (line: { readonly siteCode: string }) =>
  !code || line.siteCode === code;
