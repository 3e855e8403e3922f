import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Driver } from "@/lib/view/lineDossier";
import { count, quantity } from "@/lib/view/number";
import { eventRowsHref } from "@/lib/view/partEvent";

interface RecordLinksProps {
  readonly code: string;
  readonly driver: Driver;
  readonly showsAmounts: boolean;
}

/** Where the rows behind a driver's figures are: rates, events, pieces, hours and cost. */
export function RecordLinks({ code, driver: { part, pool }, showsAmounts }: RecordLinksProps) {
  const own = [
    { href: `/lines/${code}#downtime`, text: "Hours of stops on this line" },
    ...(showsAmounts ? [{ href: `/lines/${code}#stop-cost`, text: "What a stop costs" }] : []),
  ];
  const links = part === null || pool === null ? own : [...partLinks(part, pool), ...own];
  return (
    <nav aria-label="Records behind the arithmetic" className="mb-3">
      <ul className="flex flex-wrap gap-x-4 gap-y-1">
        {links.map(({ href, text }) => (
          <li key={text}>
            <AsOfLink href={href} className="inline-block py-1">
              {text}
            </AsOfLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function partLinks(part: NonNullable<Driver["part"]>, pool: NonNullable<Driver["pool"]>) {
  const page = `/parts/${part.id}`;
  return [
    { href: `${page}#rates`, text: `Rates of ${part.number}, from class to site` },
    { href: eventRowsHref(part.id, "failures"), text: `Rows: ${count(pool.failure.events, "failure")}` },
    { href: eventRowsHref(part.id, "removals"), text: `Rows: ${count(pool.removal.events, "removal")}` },
    { href: `${page}#stock`, text: `Pieces behind ${quantity(pool.usable)} usable` },
    { href: `${page}#downtime`, text: `Hours of stops of ${part.number}` },
  ];
}
