import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { evidenceMark } from "@/lib/view/evidence";
import type { PartDossier, SupplyFact } from "@/lib/view/partDossier";
import { day } from "@/lib/view/time";

const HEADS = [
  "Known here since",
  "About",
  "Notice",
  "Own order-by",
  "Last order",
  "Last ship",
  "Repair until",
  "Source",
  "Checked",
] as const;

function stated(date: string | null) {
  return date === null ? <span className="text-ink-3">not told</span> : day(date);
}

function FactRow({ fact, inForce }: { readonly fact: SupplyFact; readonly inForce: boolean }) {
  return (
    <tr>
      <th scope="row" className={inForce ? "font-semibold" : ""}>
        {day(fact.recordedOn)}
        {inForce ? ", in force" : ""}
      </th>
      <td>{fact.about}</td>
      <td>{stated(fact.noticeOn)}</td>
      <td>{stated(fact.orderByOn)}</td>
      <td>{stated(fact.lastOrderOn)}</td>
      <td>{stated(fact.lastShipOn)}</td>
      <td>{stated(fact.repairUntilOn)}</td>
      <td>
        {fact.source} <EvidenceMark {...evidenceMark(fact.evidence)} />
      </td>
      <td>{day(fact.checkedOn)}</td>
    </tr>
  );
}

/** Every statement about the supply known on the day, newest first; none is ever overwritten. */
export function Facts({ part }: { readonly part: PartDossier }) {
  if (part.facts.length === 0)
    return <p>Nothing is stated about its supply. Import a lifecycle register to bring dates in.</p>;
  return (
    <>
      <h3 className="mb-2 font-semibold">Statements on record</h3>
      <div className="table-frame">
        <table className="table">
          <caption className="sr-only">Statements about the supply, newest first</caption>
          <thead>
            <tr>
              {HEADS.map((head) => (
                <th key={head} scope="col" className="label">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {part.facts.map((fact) => (
              <FactRow key={fact.id} fact={fact} inForce={fact.id === part.factInForce} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
