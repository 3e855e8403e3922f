import { PROJECTS, type ProjectSpec } from "@/seed/scenarios/showcase/projectSpecs";
import { lineId, type SiteCode, siteId, siteSpec } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { CostEntryRow, MilestoneRow, ProjectRow } from "@/seed/tables";

export const projectId = (code: string): string => seedId("Project", code);
const linesOf = (text: string): string[][] =>
  text
    .trim()
    .split("\n")
    .map((line) => line.split(";"));
const orNull = (text: string | undefined): string | null =>
  text === undefined || text === "-" ? null : text;

export function projectRows(): ProjectRow[] {
  return PROJECTS.map(({ code, line, name, status, budget, forecast, startsOn, endsOn, cause }) => {
    const site = line.slice(0, 3) as SiteCode;
    return {
      id: projectId(code),
      siteId: siteId(site),
      lineId: lineId(line),
      code,
      name,
      status,
      currency: siteSpec(site).currency,
      budget,
      forecast,
      startsOn,
      endsOn,
      cause,
    };
  });
}

function milestonesOf({ code, milestones }: ProjectSpec): MilestoneRow[] {
  return linesOf(milestones).map(([name = "", weight, dueOn, doneOn], i) => ({
    id: seedId("Milestone", `${code}/${i + 1}`),
    projectId: projectId(code),
    sequence: i + 1,
    name,
    weight: Number(weight),
    dueOn: orNull(dueOn),
    doneOn: orNull(doneOn),
  }));
}

function costsOf({ code, costs }: ProjectSpec): CostEntryRow[] {
  return linesOf(costs).map(([kind, amount = "", spentOn = "", text = "", reference = ""]) => ({
    id: seedId("CostEntry", `${code}/${kind}/${reference}`),
    projectId: projectId(code),
    kind: kind === "committed" ? "committed" : "actual",
    amount,
    spentOn,
    text,
    reference,
  }));
}

export const milestoneRows = (): MilestoneRow[] => PROJECTS.flatMap(milestonesOf);
export const costEntryRows = (): CostEntryRow[] => PROJECTS.flatMap(costsOf);
