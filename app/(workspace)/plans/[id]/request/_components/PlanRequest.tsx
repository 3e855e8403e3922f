import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import { DocTables } from "@/app/(workspace)/plans/[id]/request/_components/DocTables";
import { Signatures } from "@/app/(workspace)/plans/[id]/request/_components/Signatures";
import type { BoardPage } from "@/lib/view/planBoard";
import { planSheet, REQUEST_CAUTIONS } from "@/lib/view/requestWords";
import { day } from "@/lib/view/time";

/** The capital request of the plan as a whole. */
export function PlanRequest({ page }: { readonly page: BoardPage }) {
  const { title, about, sentences, tables } = planSheet(page);
  const bound = page.view.lines.filter(({ duties }) => duties.length > 0);
  return (
    <article className="request-sheet" aria-label="Capital request of the plan">
      <header className="double-rule pt-2">
        <h2 className="font-semibold text-xl">{title}</h2>
        <p className="text-sm">{about}</p>
      </header>
      {sentences.map((sentence) => (
        <p key={sentence} className="measure mt-3">
          {sentence}
        </p>
      ))}
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
      <DocTables tables={tables} />
      <section aria-label="Cautions" className="keep-together mt-5">
        <h3 className="font-semibold">Cautions</h3>
        <ul className="measure list-disc pl-5 text-[0.9375rem]">
          {REQUEST_CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      <Signatures />
    </article>
  );
}
