import { Caution } from "@/app/_ui/Caution";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { LotTable } from "@/app/(workspace)/parts/[id]/_components/LotTable";
import { LotUndo } from "@/app/(workspace)/parts/[id]/_components/LotUndo";
import { classAgesOnShelf } from "@/lib/risk/assumptionSets";
import { count, quantity } from "@/lib/view/number";
import type { PartDossier, PartLot } from "@/lib/view/partDossier";
import { needsPowerUpCare, stockStateName, whoHasOne } from "@/lib/view/partShelf";

function Lots({ part }: { readonly part: PartDossier }) {
  const lots = whoHasOne(part.lots);
  const ready = lots.filter(({ state }) => state === "usable");
  const rest = lots.filter(({ state }) => state !== "usable");
  if (lots.length === 0)
    return (
      <p>{part.elsewhere === null ? "Nobody has one on the shelf." : "None on the shelf at your sites."}</p>
    );
  return (
    <LotUndo>
      {ready.length === 0 ? (
        <p>None that is ready to fit.</p>
      ) : (
        <LotTable caption="Who has one, ready to fit" lots={ready} part={part} />
      )}
      {rest.length === 0 ? null : (
        <details className="disclosure prints mt-2" open={ready.length === 0}>
          <summary className="py-1.5 font-semibold">
            {count(rest.length, "more lot")}, not ready to fit: {statesInWords(rest)}
          </summary>
          <LotTable caption="On the shelf, not ready to fit" lots={rest} part={part} />
        </details>
      )}
    </LotUndo>
  );
}

/** `8 wrong revision, 1 on hold`, by lots. */
function statesInWords(lots: readonly PartLot[]): string {
  const states = [...new Set(lots.map(({ state }) => state))];
  return states
    .map(
      (state) => `${lots.filter((lot) => lot.state === state).length} ${stockStateName(state).toLowerCase()}`,
    )
    .join(", ");
}

function Elsewhere({ part: { elsewhere } }: { readonly part: PartDossier }) {
  if (elsewhere === null) return null;
  return (
    <Notice kind="info">
      At other sites: {quantity(elsewhere.usable)} usable of {count(elsewhere.book, "piece")} on the books.
      Ask the group&apos;s spares planner which site has them.
    </Notice>
  );
}

/** Where a piece lies, bin by bin, with what to heed before it is fitted. */
export function WhoHasOne({ part }: { readonly part: PartDossier }) {
  const care = part.lots.some(
    (lot) => lot.quantity !== 0 && needsPowerUpCare(lot, part.itemClass, part.asOf),
  );
  return (
    <Section title="Who has one" id="who-has-one">
      <Lots part={part} />
      <Elsewhere part={part} />
      {care ? (
        <Caution title="Stored drives: power up with care">
          <p>
            Some pieces lay unpowered for more than a year, or nobody knows how long. Capacitors that aged on
            the shelf can fail or burst when full voltage is applied at once. Follow the maker&apos;s
            instruction for stored units; only a competent person does this.
          </p>
        </Caution>
      ) : null}
      {classAgesOnShelf(part.itemClass) ? (
        <Caution title="Stored energy: lock out, wait, then measure">
          <p>
            The direct-voltage circuit stays charged for minutes after power-off, shared supplies feed back
            and vertical axes fall. De-energise, lock out, read the waiting time on the unit and verify the
            absence of voltage before you touch. Qualified persons only, by national law and site rules.
          </p>
        </Caution>
      ) : null}
    </Section>
  );
}
