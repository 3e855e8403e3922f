import "@/app/(workspace)/plans/[id]/_components/board/board.css";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { BoardHead } from "@/app/(workspace)/plans/[id]/_components/board/BoardHead";
import { BoardSteps } from "@/app/(workspace)/plans/[id]/_components/board/BoardSteps";
import { BrokenList } from "@/app/(workspace)/plans/[id]/_components/board/BrokenList";
import { PlanBoard } from "@/app/(workspace)/plans/[id]/_components/board/PlanBoard";
import { WorthFigures } from "@/app/(workspace)/plans/[id]/_components/board/WorthFigures";
import { spentSpan } from "@/lib/view/boardWords";
import type { BoardPage } from "@/lib/view/planBoard";

interface BoardScreenProps {
  readonly page: BoardPage;
  readonly mayPlan: boolean;
  readonly mayApprove: boolean;
}

/** The board of a plan with what it is worth and what it breaks. */
export function BoardScreen({ page, mayPlan, mayApprove }: BoardScreenProps) {
  const { view, version } = page;
  const { worth, broken } = view;
  return (
    <>
      <BoardHead page={page} current="board" />
      <BoardSteps
        page={{ id: page.id, version, status: page.status }}
        {...{ broken: broken.length, mayPlan, mayApprove }}
      />
      <WorthFigures
        {...{ version, worth: worth.worth, spent: worth.spent, span: spentSpan(view), broken: broken.length }}
        {...{
          net: worth.worth - worth.spentDiscounted,
          lossWithout: worth.lossWithout,
          lossWith: worth.lossWith,
        }}
      />
      <BrokenList broken={broken} />
      <PlanBoard
        planId={page.id}
        version={version}
        writes={mayPlan && page.status === "draft"}
        view={{
          ...{ asOf: view.asOf, quarters: view.quarters, lines: view.lines, years: view.years, broken },
          inputs: view.inputs,
        }}
      />
      {view.unplannable.length > 0 ? (
        <Section title="Not in this plan" lead="Lines of these sites for which no way can be chosen.">
          <RowTable caption="Lines not in this plan" heads={["Line", "Why"]}>
            {view.unplannable.map(({ code, name, why }) => (
              <tr key={code}>
                <th scope="row">
                  {code} {name}
                </th>
                <td className="text-ink-2">{why}</td>
              </tr>
            ))}
          </RowTable>
        </Section>
      ) : null}
    </>
  );
}
