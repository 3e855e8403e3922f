import { RowTable } from "@/app/_ui/RowTable";
import type { JudgedController } from "@/lib/retrofit/compatibility";
import { firmwareWord } from "@/lib/retrofit/firmwareLevel";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import { count } from "@/lib/view/number";

const STEPS = {
  none: "none: runs the new drives",
  raise: "raise firmware",
  swap: "swap, and convert its program",
  unknown: "not known: model or level not read",
  "no-rule": "not known: no rule speaks of it",
} as const satisfies Record<JudgedController["step"], string>;

const HEADS = ["Controller", "Reading", "Change", "Rings", "I/O racks on record"];

/** What happens to each controller, and which rings and racks hang on it. */
export function ControllerTable({ scope }: { readonly scope: Scope }) {
  const { controllers, rings } = scope;
  return (
    <>
      {controllers.length === 0 ? <p>No controller of these axes is recorded.</p> : null}
      {controllers.length === 0 ? null : (
        <RowTable caption="Controllers" heads={HEADS}>
          {controllers.map(({ facts, step }) => (
            <tr key={facts.designation}>
              <th scope="row">{facts.designation}</th>
              <td>
                {facts.model}, level {firmwareWord(facts.level)}
              </td>
              <td>{STEPS[step]}</td>
              <td>
                {facts.rings.map(({ name, axes }) => `${name}: ${count(axes, "axis", "axes")}`).join("; ") ||
                  "none"}
              </td>
              <td>{facts.racks.map(({ family, pieces }) => `${pieces} × ${family}`).join("; ") || "none"}</td>
            </tr>
          ))}
        </RowTable>
      )}
      <p className="measure mt-3">
        {rings.length === 0
          ? "No ring is on record among these axes."
          : `Converted whole: ${rings.map(({ name, axes }) => `${name} with ${count(axes, "axis", "axes")}`).join(", ")}.`}
      </p>
    </>
  );
}
