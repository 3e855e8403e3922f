import { assumptionNotes } from "@/lib/risk/assumptions";
import { assumptionSetName } from "@/lib/view/assumptionSet";
import type { ReportInput } from "@/lib/view/report";
import type { ReportBasis, ReportDocument, ReportPage } from "@/lib/view/reportDocument";
import {
  bindingTable,
  datesTable,
  linesTable,
  reportHeadline,
  sitesTable,
  stagesTable,
} from "@/lib/view/reportRisk";
import { decisionsList, gapsTable, lateTable, poolsTable, projectsTable } from "@/lib/view/reportWork";
import { month } from "@/lib/view/time";

/** The monthly report: two pages of a site, one page of several sites together. */
export function monthlyReport(input: ReportInput): ReportDocument {
  const { asOf, sites } = input;
  const [only, another] = sites;
  const alone = another === undefined ? (only ?? null) : null;
  return {
    form: 1,
    kind: "monthly",
    period: asOf.slice(0, 7),
    title: `Monthly report, ${month(asOf)}`,
    siteCode: alone?.code ?? null,
    scope: scopeName(input),
    basis: basisOf(input),
    headline: reportHeadline(input),
    pages: alone === null ? [groupPage(input)] : sitePages(input),
    cautions: cautions(alone === null),
  };
}

/** What the figures of a report rest on. */
export function basisOf({ asOf, dataVersion, engine, assumptionSet, seed }: ReportInput): ReportBasis {
  return { asOf, dataVersion, engine, assumptions: assumptionSetName(assumptionSet), seed };
}

/** Whose report it is. */
function scopeName({ sites, wholeGroup }: ReportInput): string {
  const [only] = sites;
  if (wholeGroup && sites.length > 1) return `Group, ${sites.length} sites`;
  if (sites.length === 1 && only) return `${only.code} ${only.name}`;
  return sites.map(({ code }) => code).join(", ");
}

function sitePages(input: ReportInput): ReportPage[] {
  return [
    {
      title: "Risk",
      blocks: [linesTable(input), bindingTable(input, 4), datesTable(input, 8), stagesTable(input)],
    },
    {
      title: "Spares, projects, decisions",
      blocks: [
        poolsTable(input, 8),
        projectsTable(input, 6),
        lateTable(input, 6),
        gapsTable(input),
        decisionsList(input, 8),
      ],
    },
  ];
}

function groupPage(input: ReportInput): ReportPage {
  return {
    title: "The group",
    blocks: [
      sitesTable(input),
      linesTable(input),
      datesTable(input, 6),
      stagesTable(input),
      projectsTable(input, 6),
      lateTable(input, 6),
      gapsTable(input),
      decisionsList(input, 7),
    ],
  };
}

const ASSUMED = Object.values(assumptionNotes)
  .map(({ title }) => title.charAt(0).toLowerCase() + title.slice(1))
  .join("; ");

/** What stands at the foot of every report; one page has no room for each assumption by name. */
export function cautions(short: boolean): ReportDocument["cautions"] {
  const each = short ? "" : `: ${ASSUMED}`;
  return [
    {
      title: "Assumed",
      text: `Some values are assumed and not measured; the page Assumptions gives each and its basis${each}.`,
    },
    {
      title: "Caution",
      text:
        "These are estimates from sparse records, given with ranges and without guarantee; a 3 % chance happens. " +
        "They never justify running an unsafe machine, and safety and legal duties are not traded against money. " +
        "Losses of lines that share spares do not add up to what a plan removes.",
    },
  ];
}
