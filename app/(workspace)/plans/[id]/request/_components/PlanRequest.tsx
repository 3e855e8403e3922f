import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import { DocTables } from "@/app/(workspace)/plans/[id]/request/_components/DocTables";
import { Signatures } from "@/app/(workspace)/plans/[id]/request/_components/Signatures";
import { boardLead } from "@/lib/view/boardWords";
import { planStatusWords } from "@/lib/view/plan";
import type { BoardPage } from "@/lib/view/planBoard";
import { requestTables } from "@/lib/view/planRequest";
import { day } from "@/lib/view/time";

/** The capital request of the plan as a whole. */
export function PlanRequest({ page }: { readonly page: BoardPage }) {
  const { name, issue, status, frozenOn, createdBy, view } = page;
  const bound = view.lines.filter(({ duties }) => duties.length > 0);
  return (
    <article className="request-sheet" aria-label="Capital request of the plan">
      <header className="double-rule pt-2">
        <h2 className="font-semibold text-xl">
          Capital request: {name}, issue {issue}
        </h2>
        <p className="text-sm">
          {planStatusWords(status)}
          {frozenOn ? `, kept as it stood on ${day(frozenOn)}` : ", not put forward yet"} · prepared by{" "}
          {createdBy} · data as of {day(view.asOf)}
        </p>
      </header>
      <p className="measure mt-3">{boardLead(view)}</p>
      {bound.length > 0 ? (
        <section aria-label="Safety and legal dates" className="mt-4">
          <h3 className="font-semibold">Safety and legal dates come first, whatever the loss is</h3>
          <ul>
            {bound.flatMap(({ code, duties }) =>
              duties.map((duty) => (
                <li key={code + duty.title}>
                  <DutyMark {...duty} /> {code}: {duty.title}, {day(duty.dueOn)}
                </li>
              )),
            )}
          </ul>
        </section>
      ) : null}
      <DocTables tables={requestTables(page)} />
      <RequestCautions />
      <Signatures />
    </article>
  );
}

/** What the reader of a request has to bear in mind. */
function RequestCautions() {
  return (
    <section aria-label="Cautions" className="keep-together mt-5">
      <h3 className="font-semibold">Cautions</h3>
      <ul className="measure list-disc pl-5 text-[0.9375rem]">
        <li>
          Costs are estimates from norms of common practice and list prices; low and high are the ends of
          common practice, not limits. Get quotations before money is promised.
        </li>
        <li>
          The worth is that of the whole plan on the whole group: spares are shared and drives set free
          protect other lines, so it is not the sum of the lines. A chance of 3 % happens.
        </li>
        <li>Never use these figures to justify running an unsafe machine.</li>
        <li>
          A change of a safety-related part, a stop or a speed needs a new assessment and validation; a
          retrofit may be a substantial modification. A named competent person decides.
        </li>
        <li>
          Motor sizing, panel design and short-circuit rating may need licensed engineers; a retrofit can
          change fault levels and arc-flash labels. Work on drives and cabinets is for qualified persons.
        </li>
      </ul>
    </section>
  );
}
