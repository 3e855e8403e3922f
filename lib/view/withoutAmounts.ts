import type { ProjectFile } from "@/lib/view/project";
import type { ListedProject } from "@/lib/view/projectList";
import type { ProjectRiskRow } from "@/lib/view/projectPoints";

/** A project as it leaves for somebody to whom amounts are not shown: nothing of its money, and nothing shows it. */
export function withoutAmounts(project: ProjectFile): ProjectFile {
  return {
    ...project,
    ...{ budget: "0", budgetRate: null, forecast: null, cause: null },
    ...{ items: [], changes: [], toOrder: [], costs: [] },
  };
}

/** A project of the list, the same way; indices and shares are no amounts and stay. */
export function listedWithoutAmounts(project: ListedProject): ListedProject {
  return {
    ...project,
    ...{ budget: "0", paid: "0", open: "0", contingencyLeft: null, forecast: null, cause: null },
    ...{ perEuro: null, trend: null, eacSpan: null },
  };
}

/** A risk of a project, the same way. */
export function riskWithoutAmounts(risk: ProjectRiskRow): ProjectRiskRow {
  return { ...risk, effect: null };
}
