import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { BoardTabs } from "@/app/(workspace)/plans/[id]/_components/board/BoardTabs";
import { boardLead } from "@/lib/view/boardWords";
import { planStatusWords } from "@/lib/view/plan";
import type { BoardPage } from "@/lib/view/planBoard";
import { day } from "@/lib/view/time";

interface BoardHeadProps {
  readonly page: BoardPage;
  readonly current: "board" | "solve" | "choices" | "money" | "request";
}

/** Head of every view of a plan: what it is, how it stands, and where else to look. */
export function BoardHead({ page, current }: BoardHeadProps) {
  const { id, name, issue, status, former, frozenOn, view } = page;
  return (
    <>
      <PageHeader
        title={issue > 1 ? `${name}, issue ${issue}` : name}
        lead={boardLead(view)}
        asOf={view.asOf}
        actions={<LinkButton href={`/audit?of=plan&id=${id}`}>History</LinkButton>}
        above={
          <Breadcrumbs
            crumbs={[
              { label: "Plans", href: "/plans" },
              ...(former ? [{ label: `Issue ${former.issue}`, href: `/plans/${former.id}` }] : []),
            ]}
          />
        }
      />
      {frozenOn ? (
        <Notice kind="info" title={`${planStatusWords(status)}: kept as it stood on ${day(frozenOn)}`}>
          Day of the data {day(view.asOf)}, engine {view.engine}, data version {view.dataVersion}, assumptions{" "}
          {view.assumptions}. Nothing here changes any more; to change something, start the next issue.
        </Notice>
      ) : null}
      <BoardTabs id={id} current={current} />
    </>
  );
}
