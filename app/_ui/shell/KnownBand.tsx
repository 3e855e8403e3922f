"use client";

import { usePathname, useSearchParams } from "next/navigation";
import { Anchor } from "@/app/_ui/Anchor";
import { PaperKnown } from "@/app/_ui/shell/PaperKnown";
import { KNOWN, knownWords, looksBack, readKnownAt } from "@/lib/view/knownAt";
import { day } from "@/lib/view/time";

/** Says of every page that looks back that it does, what that means, and the way to now; printed with the page. */
export function KnownBand({ keptSince }: { readonly keptSince: string | null }) {
  const pathname = usePathname();
  const params = useSearchParams();
  const known = readKnownAt(params.get(KNOWN));
  if (known === null) return null;
  const now = new URLSearchParams(params);
  now.delete(KNOWN);
  const back = now.size === 0 ? pathname : `${pathname}?${now}`;
  const words = knownWords(known);
  const before = keptSince !== null && known.at < keptSince;
  return (
    <section aria-label="Looking back" className="mb-6 border-4 border-ink border-double px-4 py-2.5">
      <PaperKnown text={looksBack(pathname) ? `as known on ${words}` : null} />
      <div className="flex flex-wrap items-baseline justify-between gap-x-8 gap-y-2">
        <p className="font-semibold text-lg">
          {looksBack(pathname) ? `As known on ${words}` : `This page shows what is known today.`}
        </p>
        <Anchor href={back} prefetch={false} className="button no-print">
          Back to today
        </Anchor>
      </div>
      {looksBack(pathname) ? (
        <p className="measure mt-1">
          You see what was recorded until then, about what was true then. Figures are computed from it anew,
          by the computation of today. Nothing can be changed while looking back. Your rights are those of
          today.
        </p>
      ) : (
        <p className="measure mt-1">
          It cannot look back to {words}. Nothing can be changed before you go back to today.
        </p>
      )}
      {before && keptSince !== null ? (
        <p className="measure mt-1 font-semibold">
          What was changed before {day(keptSince.slice(0, 10))} is not known: former states are kept from that
          day on. For an earlier day you see the oldest state that was kept, less what its own days show to be
          later. How the shelf stood before is not known.
        </p>
      ) : null}
    </section>
  );
}
