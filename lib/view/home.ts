import type { Span } from "@/lib/risk/evaluation";
import { projectFigures, projectStatusWords } from "@/lib/view/project";
import { index } from "@/lib/view/projectMoney";
import { firstLines, type ReportInput, reportLoss } from "@/lib/view/report";
import { type Decision, decisionsAsked } from "@/lib/view/reportDecisions";
import type { ReportItem } from "@/lib/view/reportDocument";
import { lineNeed } from "@/lib/view/reportNeeds";
import { day } from "@/lib/view/time";

const LINES = 5;

/** A line that loses most, with what it needs. */
export interface HomeLine {
  readonly code: string;
  readonly name: string;
  readonly loss: Span;
  readonly need: ReportItem;
}

/** A project in one line. */
export interface HomeProject {
  readonly code: string;
  readonly name: string;
  readonly state: string;
  readonly costIndex: string;
  readonly scheduleIndex: string;
  readonly end: string;
}

/** What somebody who answers for a plant looks at first; the same figures as in the report of the day. */
export interface Home {
  readonly loss: Span | null;
  readonly lines: readonly HomeLine[];
  readonly decisions: readonly Decision[];
  readonly projects: readonly HomeProject[];
}

/** The five lines that lose most, what is to be decided, and the open projects: nothing else. */
export function homeOf(input: ReportInput): Home {
  return {
    loss: reportLoss(input).total,
    lines: firstLines(input, LINES).map(({ line, loss }) => ({
      ...{ code: line.code, name: line.name, loss, need: lineNeed(input, line) },
    })),
    decisions: decisionsAsked(input),
    projects: input.projects
      .filter(({ status }) => status !== "closed")
      .map((project) => {
        const { control } = projectFigures(project, input.asOf);
        return {
          ...{ code: project.code, name: project.name, state: projectStatusWords(project.status) },
          ...{ costIndex: index(control?.cpi), scheduleIndex: index(control?.spi) },
          end: project.endsOn === null ? "no end set" : day(project.endsOn),
        };
      }),
  };
}
