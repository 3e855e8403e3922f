import { itemClassName } from "@/lib/view/linePart";
import type { MachineDossier } from "@/lib/view/machine";
import {
  binWords,
  type CardPart,
  type CardStock,
  fitLots,
  lotsByPlace,
  placesWith,
  siteWords,
  unfitPieces,
} from "@/lib/view/nightCard";
import { plainNumber, quantity } from "@/lib/view/number";

interface SparesOfPartProps {
  readonly part: CardPart;
  readonly machine: MachineDossier;
}

/** One part of the machine: where it sits, what lies in which bin, and what may stand in for it. */
export function SparesOfPart({ part, machine }: SparesOfPartProps) {
  const { here } = lotsByPlace(part.stock.lots, machine.site.code);
  const unfit = unfitPieces(here);
  return (
    <article className="card-part">
      <h3>
        {part.number} <span className="font-normal">{itemClassName(part.itemClass)}</span>
      </h3>
      <p className="text-ink-2">in {placesWith(machine, part.id).join(", ")}</p>
      <Shelves stock={part.stock} siteCode={machine.site.code} />
      {unfit === 0 ? null : (
        <p className="text-ink-2">
          {plainNumber(unfit)} more here not to be fitted as they are: on hold, reserved, unproven or wrong
          revision.
        </p>
      )}
      {part.alternates.map((alternate) => (
        <div key={alternate.id} className="card-alternate">
          <p>
            <strong>{alternate.number}</strong> instead, only if:{" "}
            {alternate.condition ?? "conditions not recorded; ask before fitting."}
          </p>
          <Shelves stock={alternate.stock} siteCode={machine.site.code} />
        </div>
      ))}
    </article>
  );
}

interface ShelvesProps {
  readonly stock: CardStock;
  readonly siteCode: string;
}

function Shelves({ stock, siteCode }: ShelvesProps) {
  const { here, there } = lotsByPlace(fitLots(stock), siteCode);
  return (
    <ul>
      <li className={here.length === 0 ? "" : "font-semibold"}>
        {here.length === 0 ? "None here." : `Here: ${here.map(binWords).join("; ")}`}
      </li>
      {there.length === 0 ? null : <li>{siteWords(there)}</li>}
      {stock.unnamed === null ? null : (
        <li>At other sites: {stock.unnamed === 0 ? "none" : `about ${quantity(stock.unnamed)} usable`}.</li>
      )}
    </ul>
  );
}
