import type { VanishedThings } from "@/lib/view/importView";
import { count, plainNumber } from "@/lib/view/number";
import { moment } from "@/lib/view/time";

/** What the last file of its kind spoke of and this one does not. It stays stored; a person decides. */
export function VanishedTable({ vanished }: { readonly vanished: VanishedThings }) {
  const { fileName, at, shown } = vanished;
  return (
    <details className="disclosure mt-4">
      <summary className="font-semibold text-accent">
        {count(vanished.count, "thing")} in {fileName}, loaded on {moment(at, "UTC")} UTC, and not in this
        file
      </summary>
      <p className="measure my-2 text-ink-2 text-sm">
        Loading this file leaves them as they are. If they are gone, say so where they stand.
        {vanished.count > shown.length ? ` The first ${plainNumber(shown.length)} are listed.` : ""}
      </p>
      <ul className="columns-1 pl-4 sm:columns-2">
        {shown.map(({ thing, name }) => (
          <li key={`${thing} ${name}`}>
            {thing} {name}
          </li>
        ))}
      </ul>
    </details>
  );
}
