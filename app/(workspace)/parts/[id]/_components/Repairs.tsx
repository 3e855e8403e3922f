import { Fold } from "@/app/_ui/Fold";
import { count, plainNumber } from "@/lib/view/number";
import type { PartDossier } from "@/lib/view/partDossier";
import { partFolds } from "@/lib/view/partFolds";
import { overdueText } from "@/lib/view/partSupply";
import { day } from "@/lib/view/time";

const HEADS = ["Order", "Site", "Serial", "Sent", "Promised", "State"] as const;

/** Units away for repair, the longest overdue first. */
export function Repairs({ part }: { readonly part: PartDossier }) {
  const { repairs, elsewhere, asOf } = part;
  return (
    <Fold page="part" title="Out for repair" id="repairs" figure={partFolds.repairs(part)}>
      {repairs.length === 0 ? (
        <p>None is out for repair{elsewhere === null ? "" : " from your sites"}.</p>
      ) : (
        <div className="table-frame">
          <table className="table">
            <caption className="sr-only">Units out for repair, the longest overdue first</caption>
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
              {repairs.map((repair) => (
                <tr key={repair.id}>
                  <th scope="row">{repair.reference}</th>
                  <td>{repair.siteCode}</td>
                  <td>{repair.serial ?? "not known"}</td>
                  <td>{day(repair.sentOn)}</td>
                  <td>{repair.dueOn === null ? "no day promised" : day(repair.dueOn)}</td>
                  <td className={overdueText(repair.dueOn, asOf) === null ? "" : "font-semibold"}>
                    {overdueText(repair.dueOn, asOf) ?? "out"}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {elsewhere === null ? null : (
        <p className="mt-2">
          From other sites: {count(elsewhere.repairsOut, "unit")} out, {plainNumber(elsewhere.repairsOverdue)}{" "}
          overdue.
        </p>
      )}
    </Fold>
  );
}
