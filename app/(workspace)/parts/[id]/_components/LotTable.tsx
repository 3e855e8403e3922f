import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { LotDialog } from "@/app/(workspace)/parts/[id]/_components/LotDialog";
import { percent } from "@/lib/view/chance";
import { plainNumber } from "@/lib/view/number";
import type { PartDossier, PartLot } from "@/lib/view/partDossier";
import { lotCautions, stockStateName } from "@/lib/view/partShelf";
import { day } from "@/lib/view/time";

interface LotTableProps {
  readonly caption: string;
  readonly lots: readonly PartLot[];
  readonly part: PartDossier;
}

const HEADS = [
  "Site",
  "Bin",
  "Revision",
  { text: "Pieces", end: true },
  "State",
  { text: "Chance it works", end: true },
  "Last powered",
  "Counted",
  "Heed",
  { text: "Change", print: false },
];

/** Lots bin by bin, with what to heed before a piece is fitted. */
export function LotTable({ caption, lots, part }: LotTableProps) {
  return (
    <RowTable caption={caption} heads={HEADS}>
      {lots.map((lot) => (
        <LotRow key={lot.id} lot={lot} part={part} />
      ))}
    </RowTable>
  );
}

interface LotRowProps {
  readonly lot: PartLot;
  readonly part: PartDossier;
}

function LotRow({ lot, part }: LotRowProps) {
  return (
    <tr data-anchor={`bin-${lot.siteCode}-${lot.bin}`}>
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
      <td className="no-print">
        {lot.mayChange ? <LotDialog lot={lot} /> : null}
        <AsOfLink href={`/audit?of=lot&id=${lot.id}`} aria-label={`History of ${lot.bin}`}>
          History
        </AsOfLink>
      </td>
    </tr>
  );
}
