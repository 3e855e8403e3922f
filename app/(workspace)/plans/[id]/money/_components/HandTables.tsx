import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { quarterWords } from "@/lib/view/limitWords";
import { plainNumber } from "@/lib/view/number";
import type { BoardView, UsedRow } from "@/lib/view/planBoard";

/** Engineer-weeks of sites and crew-weeks of regions used of what there is, by quarter. */
export function HandTables({ view }: { readonly view: BoardView }) {
  const quarters = view.quarters.map(({ id }) => id);
  return (
    <>
      <HandTable
        title="Engineer-weeks"
        lead="The sites' own engineers: used of what there is, by quarter."
        {...{ rows: view.engineers, quarters }}
      />
      <HandTable
        title="Crew-weeks"
        lead="Integrator crews of a region: used of what there is, by quarter."
        {...{ rows: view.crews, quarters }}
      />
    </>
  );
}

interface HandTableProps {
  readonly title: string;
  readonly lead: string;
  readonly rows: readonly UsedRow[];
  readonly quarters: readonly string[];
}

function HandTable({ title, lead, rows, quarters }: HandTableProps) {
  const places = [...new Set(rows.map(({ what }) => what))];
  return (
    <Section title={title} lead={lead}>
      {places.length === 0 ? (
        <p className="text-ink-2">Nobody has stated how much there is; nothing binds.</p>
      ) : (
        <RowTable
          caption={title}
          heads={["Where", ...quarters.map((id) => ({ text: quarterWords(id), end: true }))]}
        >
          {places.map((what) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              {quarters.map((id) => (
                <UsedCell key={id} row={rows.find((one) => one.what === what && one.quarterId === id)} />
              ))}
            </tr>
          ))}
        </RowTable>
      )}
    </Section>
  );
}

function UsedCell({ row }: { readonly row: UsedRow | undefined }) {
  if (!row) return <td data-align="end">–</td>;
  const { used, most } = row;
  const over = most !== null && used > most * (1 + 1e-9);
  return (
    <td data-align="end" className={over ? "font-semibold text-worse" : used === 0 ? "text-ink-2" : ""}>
      {over ? "▲ " : ""}
      {plainNumber(used, 1)}
      <span className="font-normal text-ink-2 text-sm">
        {" "}
        / {most === null ? "no limit" : plainNumber(most, 1)}
      </span>
    </td>
  );
}
