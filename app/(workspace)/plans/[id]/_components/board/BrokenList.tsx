import type { BrokenWords } from "@/lib/view/planBoard";

/** The limits a plan breaks, each with how much of what there is. */
export function BrokenList({ broken }: { readonly broken: readonly BrokenWords[] }) {
  if (broken.length === 0)
    return (
      <p className="mb-4 text-ink-2 text-sm">Every limit is kept: money, hands, windows, order and duties.</p>
    );
  return (
    <section aria-label="Broken limits" className="mb-5 border-worse border-l-4 bg-shade px-4 py-2.5">
      <h2 className="font-semibold">
        {broken.length === 1 ? "One limit is broken" : `${broken.length} limits are broken`}
      </h2>
      <ul className="mt-1 grid gap-x-8 text-[0.9375rem] md:grid-cols-2">
        {broken.map(({ what, numbers }) => (
          <li key={`${what}${numbers}`} className="border-rule border-t py-1">
            <span aria-hidden="true" className="mr-1.5 text-worse">
              ▲
            </span>
            {what}
            {numbers ? <span className="text-ink-2"> – {numbers}</span> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
