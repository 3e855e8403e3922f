import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Kept } from "@/app/(card)/machines/[id]/card/_components/Kept";
import { PrintCard } from "@/app/(card)/machines/[id]/card/_components/PrintCard";
import type { NightCard } from "@/lib/view/nightCard";
import { day, moment } from "@/lib/view/time";

const PARTS = [
  ["call", "Call"],
  ["spares", "Spares"],
  ["copies", "Copies"],
  ["installed", "Installed"],
] as const;

/** Which machine, of which day, and what can be done with the card. */
export function CardHead({ card: { machine, madeAt } }: { readonly card: NightCard }) {
  const { id, code, name, line, site, asOf, retired } = machine;
  return (
    <header>
      <p className="label">
        Night card · {site.code} {site.name} · line {line.code} {line.name}
      </p>
      <h1>
        {line.code} / {code} {name}
      </h1>
      <p>
        As of <time dateTime={asOf}>{day(asOf)}</time>; made {moment(madeAt, site.timeZone)} in the time of{" "}
        {site.name}.
      </p>
      {retired === null ? null : (
        <p className="font-bold">
          {`Out of service since ${day(retired.on)}. ${retired.reason || "No reason is recorded."}`}
        </p>
      )}
      <nav aria-label="On this card" className="no-print mt-2 flex flex-wrap gap-2">
        {PARTS.map(([id, words]) => (
          <a key={id} href={`#${id}`} className="button">
            {words}
          </a>
        ))}
      </nav>
      <div className="no-print mt-2 flex flex-wrap gap-2">
        <PrintCard />
        <AsOfLink className="button" href={`/machines/${id}`}>
          Machine page
        </AsOfLink>
      </div>
      <Kept madeAt={moment(madeAt, site.timeZone)} />
    </header>
  );
}
