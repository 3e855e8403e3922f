import type { AssumptionUse } from "@/lib/data/assumptions";
import { assumptionKindName } from "@/lib/view/assumptionSet";
import { day } from "@/lib/view/time";

/** Which version was taken into use when. */
export function Uses({ uses }: { readonly uses: readonly AssumptionUse[] }) {
  return (
    <div className="mt-4">
      <h3 className="mb-1 font-semibold">In use over time</h3>
      {uses.length === 0 ? (
        <p>The likely set of the product has been in use from the start.</p>
      ) : (
        <ol className="list-disc pl-5 text-sm">
          {uses.map(({ id, kind, version, on, by }) => (
            <li key={id}>
              {day(on)}: {assumptionKindName(kind)}, version {version}, taken into use by {by}
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}
