import type { Span } from "@/lib/risk/evaluation";
import { projectFigures, projectStatusWords } from "@/lib/view/project";
import { index } from "@/lib/view/projectMoney";
import { firstLines, type ReportInput, type ReportLine, reportLoss } from "@/lib/view/report";
import { type Decision, decisionsAsked } from "@/lib/view/reportDecisions";
import type { ReportItem } from "@/lib/view/reportDocument";
import { lineNeed } from "@/lib/view/reportNeeds";
import { reportWithoutAmounts } from "@/lib/view/reportWithoutAmounts";
import { day } from "@/lib/view/time";

const LINES = 5;

/** A line that loses most, with what it needs. */
export interface HomeLine {
  readonly code: string;
  readonly name: string;
  /** Null is not known, or not shown to the reader. */
  readonly loss: Span | null;
  /** 0 to 100. */
  readonly score: number;
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

/**
 * The five lines that lose most, what is to be decided, and the open projects: nothing else. Where no loss is known or
 * shown, the lines of the highest score; needs, states and indices are no amounts and stay.
 *
 * @param isShown Whether amounts of the site of this id are shown to the reader.
 */
export function homeOf(input: ReportInput, isShown: (siteId: string) => boolean): Home {
  const told = reportWithoutAmounts(input, isShown);
  const loss = reportLoss(told).total;
  const first = loss === null ? byScore(input).map((line) => ({ line, loss })) : firstLines(told, LINES);
  return {
    loss,
    lines: first.map(({ line, loss: ofLine }) => ({
      ...{ code: line.code, name: line.name, loss: ofLine, score: line.result.score },
      need: lineNeed(input, line),
    })),
    decisions: decisionsAsked(told),
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

function byScore({ lines }: ReportInput): ReportLine[] {
  return [...lines]
    .sort((a, b) => b.result.score - a.result.score || (a.code < b.code ? -1 : 1))
    .slice(0, LINES);
}
