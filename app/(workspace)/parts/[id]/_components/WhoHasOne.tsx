import { Caution } from "@/app/_ui/Caution";
import { Notice } from "@/app/_ui/Notice";
import { Section } from "@/app/_ui/Section";
import { LotDialog } from "@/app/(workspace)/parts/[id]/_components/LotDialog";
import { classAgesOnShelf } from "@/lib/risk/assumptionSets";
import { percent } from "@/lib/view/chance";
import { count, plainNumber, quantity } from "@/lib/view/number";
import type { PartDossier, PartLot } from "@/lib/view/partDossier";
import { lotCautions, needsPowerUpCare, stockStateName, whoHasOne } from "@/lib/view/partShelf";
import { day } from "@/lib/view/time";

interface LotRowProps {
  readonly lot: PartLot;
  readonly part: PartDossier;
  /** Target of a link to the bin; only the first lot of a bin has it. */
  readonly anchor: string | undefined;
}

function LotRow({ lot, part, anchor }: LotRowProps) {
  return (
    <tr id={anchor}>
      <th scope="row" className="font-semibold">
        <abbr title={lot.siteName} className="no-underline">
          {lot.siteCode}
        </abbr>
      </th>
      <td className="whitespace-nowrap font-semibold">{lot.bin}</td>
      <td>{lot.revision === "" ? "not known" : lot.revision}</td>
      <td data-align="end">{lot.quantity === null ? "not counted" : plainNumber(lot.quantity)}</td>
      <td className="whitespace-nowrap">{stockStateName(lot.state)}</td>
      <td data-align="end">{lot.works === 0 ? "not counted" : percent(lot.works)}</td>
      <td className="whitespace-nowrap">{day(lot.lastPoweredOn)}</td>
      <td className="whitespace-nowrap">{day(lot.countedOn)}</td>
      <td className="text-sm">{lotCautions(lot, part.itemClass, part.asOf).join(" ")}</td>
      <td className="no-print">{lot.mayChange ? <LotDialog lot={lot} /> : null}</td>
    </tr>
  );
}

const binOf = ({ siteCode, bin }: PartLot) => `bin-${siteCode}-${bin}`;

function Lots({ part }: { readonly part: PartDossier }) {
  const lots = whoHasOne(part.lots);
  const bins = lots.map(binOf);
  if (lots.length === 0)
    return (
      <p>{part.elsewhere === null ? "Nobody has one on the shelf." : "None on the shelf at your sites."}</p>
    );
  return (
    <div className="table-frame">
      <table className="table">
        <caption className="sr-only">Who has one, ready to fit first</caption>
        <thead>
          <tr>
            {["Site", "Bin", "Revision"].map((head) => (
              <th key={head} scope="col" className="label">
                {head}
              </th>
            ))}
            <th scope="col" className="label" data-align="end">
              Pieces
            </th>
            <th scope="col" className="label">
              State
            </th>
            <th scope="col" className="label" data-align="end">
              Chance it works
            </th>
            {["Last powered", "Counted", "Heed"].map((head) => (
              <th key={head} scope="col" className="label">
                {head}
              </th>
            ))}
            <th scope="col" className="label no-print">
              Change
            </th>
          </tr>
        </thead>
        <tbody>
          {lots.map((lot, place) => (
            <LotRow
              key={lot.id}
              lot={lot}
              part={part}
              anchor={bins.indexOf(binOf(lot)) === place ? binOf(lot) : undefined}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
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
