import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { RowTable } from "@/app/_ui/RowTable";
import type { AxisScope } from "@/lib/retrofit/scope/axisScope";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import { evidenceMark } from "@/lib/view/evidence";
import { count } from "@/lib/view/number";

const FITS = {
  fits: "fits",
  adapter: "stays with an adapter",
  sizing: "a competent engineer must size a replacement",
  unknown: "not known",
} as const;

const HEADS = ["Axis", "Drive now", "Follows", "Motor", "Network", "Why"];

/** Each converted axis with what follows its drive and whether its motor can stay. */
export function AxisTable({ scope }: { readonly scope: Scope }) {
  const { axes, staying, elsewhere } = scope;
  const lines = [...new Set(elsewhere.map(({ lineCode }) => lineCode))];
  return (
    <>
      <RowTable caption="Axes to convert" heads={HEADS}>
        {axes.map((one) => (
          <AxisRow key={one.axis.id} one={one} />
        ))}
      </RowTable>
      {elsewhere.length === 0 ? null : (
        <p className="measure mt-3">
          {`${count(elsewhere.length, "axis", "axes")} of ${lines.join(", ")} hang on the same rings and have to come along; they are not in the figures.`}
        </p>
      )}
      {staying.length === 0 ? null : (
        <p className="measure mt-3">{`${count(staying.length, "axis stays", "axes stay")}: open supply or the family asked for.`}</p>
      )}
    </>
  );
}

function AxisRow({ one }: { readonly one: AxisScope }) {
  const { axis, successor, motor, why } = one;
  return (
    <tr>
      <th scope="row" className="whitespace-nowrap">
        {`${axis.machine} / ${axis.code}`} <EvidenceMark {...evidenceMark(axis.evidence)} />
      </th>
      <td>{axis.drive?.number ?? "not identified"}</td>
      <td>
        {successor === null ? (
          "none on record"
        ) : (
          <>
            <AsOfLink href={`/parts/${successor.part.id}`}>{successor.part.number}</AsOfLink>
            <span className="block text-ink-2 text-sm">
              {successor.basis === "recorded"
                ? (successor.condition ?? "recorded")
                : "not recorded: the same size mark only"}
            </span>
          </>
        )}
      </td>
      <td>
        {axis.motor?.number ?? "not recorded"}: {FITS[motor.fit]}
        <span className="block text-ink-2 text-sm">{motor.words}</span>
      </td>
      <td>{axis.network ?? "not recorded"}</td>
      <td>{why === "out of supply" ? "drive out of open supply" : "comes along: same ring"}</td>
    </tr>
  );
}
