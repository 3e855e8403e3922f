import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { type BenefitFigures, benefitRows, promiseRows } from "@/lib/view/benefit";
import { dayRange } from "@/lib/view/time";

/** The year before against the time after, and what was asked for against what came. */
export function Comparison({ figures }: { readonly figures: BenefitFigures }) {
  const { before, after, whole } = figures;
  const heads = [
    "What",
    { text: `Before, ${dayRange(before.from, before.until)}`, end: true },
    { text: `After, ${dayRange(after.from, after.until)}${whole ? "" : ", not a whole year"}`, end: true },
    "Note",
  ];
  return (
    <>
      <Section
        title="Before and after"
        lead="The year before the first unit came out against the time since closing, its last day not in it; what happened during the work is in neither. One year of one line tells little: two counts of rare events differ by chance, and output may have changed too."
      >
        <RowTable caption="Before and after" heads={heads}>
          {benefitRows(figures).map(({ label, before: was, after: is, said }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td data-align="end">{was}</td>
              <td data-align="end">{is}</td>
              <td className="text-ink-2 text-sm">{said}</td>
            </tr>
          ))}
        </RowTable>
        <p className="measure mt-2 text-ink-2 text-sm">
          Rate: events and drive-years of the stretch alone, after Jeffreys’ prior (Gamma with shape ½, from
          memory), with the 5 % and 95 % points. Events of one common cause count once.
        </p>
      </Section>
      <Section
        title="Against what was asked for"
        lead="EUR at the budget rate. A line that no plan funded has no request to compare with."
      >
        <RowTable
          caption="Against what was asked for"
          heads={["What", { text: "Asked for", end: true }, { text: "Came", end: true }]}
        >
          {promiseRows(figures).map(({ label, promised, came }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td data-align="end">{promised}</td>
              <td data-align="end">{came}</td>
            </tr>
          ))}
        </RowTable>
      </Section>
    </>
  );
}
