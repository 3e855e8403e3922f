import { z } from "zod";
import { readEvaluation, sliceLines } from "@/lib/data/lineSlice";
import { sliceParts, sliceSupplyDates } from "@/lib/data/partSlices";
import { sliceAxes, sliceMachines, sliceSites, sliceUnits } from "@/lib/data/placeSlices";
import { sliceEvents, sliceProjects, sliceRepairs, sliceStockLots } from "@/lib/data/recordSlices";
import { listing, paged, pagedAtSite } from "@/lib/interface/listing";
import { noQuery, type Operation, operation } from "@/lib/interface/operation";
import * as items from "@/lib/interface/shapes/items";
import * as places from "@/lib/interface/shapes/places";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { ok } from "@/lib/kernel/result";

const since = z
  .string()
  .refine(isIsoDate, "Write a day that exists, as 2026-11-30.")
  .optional()
  .describe("Only what happened on this day (UTC) or later.");

/** Everything the interface shows. */
export const READS: readonly Operation[] = [
  operation({
    ...{ method: "GET", path: "/evaluation", name: "readEvaluation", needs: "read" },
    title: "The evaluation in force",
    text: "On which day and data the figures were computed, and the sums you may see.",
    ...{ query: noQuery, body: null, answer: places.evaluation, answerName: "Evaluation" },
    run: async (actor) => ok(await readEvaluation(actor)),
  }),
  listing({
    ...{ path: "/sites", name: "listSites", title: "Sites", pageName: "SitePage" },
    text: "The sites the key reads.",
    ...{ query: paged, row: places.site, slice: sliceSites },
  }),
  listing({
    ...{ path: "/lines", name: "listLines", title: "Lines", pageName: "LinePage" },
    text: "Lines with stop loss and its span, score in three parts, both ranks and the span of the place.",
    ...{ query: pagedAtSite, row: places.line, slice: sliceLines },
  }),
  listing({
    ...{ path: "/machines", name: "listMachines", title: "Machines", pageName: "MachinePage" },
    text: "Machines of the lines.",
    ...{ query: pagedAtSite, row: places.machine, slice: sliceMachines },
  }),
  listing({
    ...{ path: "/axes", name: "listAxes", title: "Axes", pageName: "AxisPage" },
    text: "Axes of the machines, with their place on the network and their travel.",
    ...{ query: pagedAtSite, row: places.axis, slice: sliceAxes },
  }),
  listing({
    ...{ path: "/units", name: "listUnits", title: "Places and units", pageName: "UnitPage" },
    text: "Each place that holds an item, and the unit that stands there now.",
    ...{ query: pagedAtSite, row: places.unit, slice: sliceUnits },
  }),
  listing({
    ...{ path: "/parts", name: "listParts", title: "Parts", pageName: "PartPage" },
    text: "Parts of the group with supply stage, installed units, stock and the chance of no spare.",
    ...{ query: paged, row: items.part, slice: sliceParts },
  }),
  listing({
    ...{ path: "/supply-dates", name: "listSupplyDates", title: "Supply dates", pageName: "SupplyDatePage" },
    text: "Sourced statements about supply, of a part or of every part of a family.",
    ...{ query: paged, row: items.supplyDate, slice: sliceSupplyDates },
  }),
  listing({
    ...{ path: "/stock-lots", name: "listStockLots", title: "Stock lots", pageName: "StockLotPage" },
    text: "What lies in which bin, in which revision and state.",
    ...{ query: pagedAtSite, row: items.stockLot, slice: sliceStockLots },
  }),
  listing({
    ...{ path: "/events", name: "listEvents", title: "Events", pageName: "EventPage" },
    text: "Failures and removals, with what counts and why something does not.",
    ...{ query: pagedAtSite.extend({ since }), row: items.event },
    slice: (actor, asked, query) => sliceEvents(actor, { ...asked, since: query.since ?? null }),
  }),
  listing({
    ...{ path: "/repairs", name: "listRepairs", title: "Repairs", pageName: "RepairPage" },
    text: "Units sent for repair, and how they came back.",
    ...{ query: pagedAtSite, row: items.repair, slice: sliceRepairs },
  }),
  listing({
    ...{ path: "/projects", name: "listProjects", title: "Projects", pageName: "ProjectPage" },
    text: "Retrofit projects with budget, forecast and days.",
    ...{ query: pagedAtSite, row: items.project, slice: sliceProjects },
  }),
];
