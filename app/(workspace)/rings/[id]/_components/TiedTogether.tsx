import { Section } from "@/app/_ui/Section";
import { count } from "@/lib/view/number";
import { type RingSheetRow, tiedTogether } from "@/lib/view/ring";

/** What stops with any one node, and what has to be converted at once. */
export function TiedTogether({ rows }: { readonly rows: readonly RingSheetRow[] }) {
  const { machines, controllers } = tiedTogether(rows);
  const axes = count(rows.length, "axis", "axes");
  return (
    <Section title="What hangs together">
      <dl className="measure grid gap-3">
        <div>
          <dt className="label">Stops with any one node</dt>
          <dd>
            All {axes} of {machines.join(", ")}: each node repeats the light for the next one. The fault shows
            at the node after it.
          </dd>
        </div>
        <div>
          <dt className="label">Converts together</dt>
          <dd>
            All {axes}, under{" "}
            {controllers.length === 0 ? "a controller not recorded" : controllers.join(", ")}, unless a second
            network runs beside the ring until the last of them is changed.
          </dd>
        </div>
      </dl>
    </Section>
  );
}
