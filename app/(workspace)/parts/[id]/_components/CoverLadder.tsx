import { Derivation } from "@/app/_ui/Derivation";
import { Fold } from "@/app/_ui/Fold";
import { RowTable } from "@/app/_ui/RowTable";
import { SpanBar } from "@/app/_ui/SpanBar";
import { percent } from "@/lib/view/chance";
import { coverRungs, type CoverLadder as Ladder } from "@/lib/view/coverLadder";
import { coverDayText, exitGapText } from "@/lib/view/coverWords";
import { exactMoney, money } from "@/lib/view/format";
import { count, NOT_KNOWN, plainNumber, quantity, significant } from "@/lib/view/number";
import { day } from "@/lib/view/time";

const HEADS = [
  "By",
  { text: "No-spare chance", end: true },
  "5 % to 95 % of the rate",
  { text: "Pieces come, expected to work", end: true },
  { text: "Units gone", end: true },
];

function Rungs({ ladder, asOf }: LadderProps) {
  return (
    <RowTable caption="Cover ladder: chance of no spare by month" heads={HEADS}>
      {coverRungs(ladder, asOf).map(({ months, on, noSpare, come, left }) => (
        <tr key={months}>
          <th scope="row">
            {months === 0 ? "now" : `${months} months`}{" "}
            <span className="font-normal text-ink-2 text-sm">{day(on)}</span>
          </th>
          <td data-align="end">{percent(noSpare.mean)}</td>
          <td>
            <SpanBar {...noSpare} max={1} text={`${percent(noSpare.low)} to ${percent(noSpare.high)}`} />{" "}
            <span className="text-ink-2 text-sm">
              {percent(noSpare.low)} to {percent(noSpare.high)}
            </span>
          </td>
          <td data-align="end">{quantity(come)}</td>
          <td data-align="end">{plainNumber(left)}</td>
        </tr>
      ))}
    </RowTable>
  );
}

function Coming({ ladder: { coming } }: Pick<LadderProps, "ladder">) {
  if (coming.length === 0) return <p className="mt-2">No pieces are known to come.</p>;
  return (
    <RowTable
      caption="Pieces still to come"
      heads={[
        "From the day",
        "From",
        { text: "Pieces", end: true },
        { text: "Works with chance", end: true },
        { text: "Counted as", end: true },
      ]}
    >
      {coming.map(({ from, on, pieces, works }) => (
        <tr key={`${from} ${on} ${works}`}>
          <th scope="row">{day(on)}</th>
          <td>{from === "repair" ? "repair" : "planned removal, kept and tested"}</td>
          <td data-align="end">{plainNumber(pieces)}</td>
          <td data-align="end">{percent(works)}</td>
          <td data-align="end">{quantity(pieces * works)}</td>
        </tr>
      ))}
    </RowTable>
  );
}

function stepsOf(ladder: Ladder, asOf: string) {
  const { days, exit, installed, removalsPerYear, usable, shortageLoss, lossPerPrice, price } = ladder;
  const text = (date: string | null) =>
    coverDayText(date, { months: ladder.noSpareByMonth.length - 1, asOf });
  return [
    {
      label: "Removals a year",
      formula: `${plainNumber(installed)} units × rate`,
      value: significant(removalsPerYear, 3),
    },
    { label: "Pieces expected to work now", value: quantity(usable) },
    { label: "Even chance of an empty shelf, P50", value: text(days.p50) },
    {
      label: "Likely empty, P80",
      formula: `rate at its 95 % point: ${text(days.p80Early)}; at its 5 % point: ${text(days.p80Late)}`,
      value: text(days.p80),
    },
    {
      label: "Almost surely empty, P95",
      formula: "straight line from month to month",
      value: text(days.p95),
    },
    {
      label: "Exit gap",
      formula: "P80 − last planned removal, months; below zero is trouble",
      value: exitGapText(exit),
    },
    {
      label: "Lost a year for want of a spare ÷ price",
      formula: `${money(shortageLoss)} ÷ ${price === null ? NOT_KNOWN : exactMoney(price.amount, price.currency)}${price?.pricedOn ? `, ${day(price.pricedOn)}` : ""}`,
      value: lossPerPrice === null ? NOT_KNOWN : significant(lossPerPrice, 2),
    },
  ];
}

interface LadderProps {
  readonly ladder: Ladder;
  readonly asOf: string;
}

/** The cover of a part rung by rung, what is still to come, and how its days lie to the last planned removal. */
export function CoverLadder({ ladder, asOf }: LadderProps) {
  const { days, exit, installed } = ladder;
  return (
    <Fold
      page="part"
      title="Cover ladder"
      id="ladder"
      figure={`likely empty (P80) ${coverDayText(days.p80, { months: ladder.noSpareByMonth.length - 1, asOf })}`}
      lead={`${count(installed, "unit")} in service. Exit gap: ${exitGapText(exit)}.`}
    >
      <Rungs ladder={ladder} asOf={asOf} />
      <Coming ladder={ladder} />
      <Derivation title="How the days and the exit gap are worked out" steps={stepsOf(ladder, asOf)}>
        A day is the first on which a failure finds the shelf empty with that chance, all sites one pool.
        Pieces to come count from their day, times the chance that they work; a removal planned and not kept
        brings none. Where units have no planned removal there is no day the last one leaves, and no gap is
        told.
      </Derivation>
    </Fold>
  );
}
