"use client";

import { usePathname, useSearchParams } from "next/navigation";
import { Anchor } from "@/app/_ui/Anchor";
import { PaperKnown } from "@/app/_ui/shell/PaperKnown";
import { isBefore, KNOWN, type KnownFrom, knownWords, looksBack, readKnownAt } from "@/lib/view/knownAt";
import { zonedMoment } from "@/lib/view/zone";

interface KnownBandProps {
  readonly from: KnownFrom | null;
  /** Zone whose clock the reader is told instants by. */
  readonly zone: string;
}

/** Says of every page that looks back that it does, what that means, and the way to now; printed with the page. */
export function KnownBand({ from, zone }: KnownBandProps) {
  const pathname = usePathname();
  const params = useSearchParams();
  const known = readKnownAt(params.get(KNOWN));
  if (known === null) return null;
  const now = new URLSearchParams(params);
  now.delete(KNOWN);
  const back = now.size === 0 ? pathname : `${pathname}?${now}`;
  const words = knownWords(known);
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
      {!looksBack(pathname) ? (
        <p className="measure mt-1">
          It cannot look back to {words}. Nothing can be changed before you go back to today.
        </p>
      ) : from !== null && isBefore(known, from) ? (
        <Unknown since={from.since} at={zonedMoment(from.at, zone)} />
      ) : (
        <p className="measure mt-1">
          You see what was recorded until then, about what was true then. Figures are computed from it anew,
          by the computation of today. Nothing can be changed while looking back. Your rights are those of
          today.
        </p>
      )}
    </section>
  );
}

/** Says that what stood on record then cannot be told, and since when it can. */
function Unknown({ since, at }: { readonly since: KnownFrom["since"]; readonly at: string }) {
  return since === "first" ? (
    <p className="measure mt-1">Nothing was on record then. The first record was made on {at}.</p>
  ) : (
    <p className="measure mt-1">
      How the records stood then is not known: former states are kept since {at}. Choose a later day above, at
      “As of”. Of an earlier day only the ranking of the lines can be shown, where a snapshot of it was taken.
    </p>
  );
}
