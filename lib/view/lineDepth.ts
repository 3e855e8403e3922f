import type { LineResult, StandInResult } from "@/lib/risk/evaluation";
import { type ArithmeticStep, type Figure, figure } from "@/lib/view/lineArithmeticStep";
import type { Driver, LineDossier } from "@/lib/view/lineDossier";
import { quantity, significant } from "@/lib/view/number";

/** A part and what of the line's loss comes from not knowing it. */
export type UnknownPart = Pick<Driver, "poolId" | "label"> & { readonly loss: number };

/** The parts of a line of which something is unknown that costs, the dearest first. */
export function unknownParts(drivers: readonly Driver[]): UnknownPart[] {
  return drivers
    .flatMap(({ poolId, label, unknownLoss }) => (unknownLoss ? [{ poolId, label, loss: unknownLoss }] : []))
    .sort((a, b) => b.loss - a.loss);
}

const plusBetween = (figures: readonly Figure[]): (Figure | string)[] =>
  figures.flatMap((one, i) => (i === 0 ? [one] : ["+", one]));

/** Opens the figures of the whole line that no single part has: stand-in machines, unknowns and the years ahead. */
export function lineDepth(line: Pick<LineDossier, "result" | "drivers" | "assumptions">): ArithmeticStep[] {
  const { unknownLoss, horizonLoss, standIns = [] } = line.result;
  return [
    ...standIns.map((machine) => standInStep(machine, standIns)),
    ...unknownSteps(unknownLoss, line.drivers),
    ...horizonSteps(horizonLoss, line.assumptions),
  ];
}

/** With one machine to spare the chance is written out; with more it is added up over all combinations. */
function standInStep(machine: StandInResult, all: readonly StandInResult[]): ArithmeticStep {
  const { machineId, group, needed, of, down, stopShare } = machine;
  const others = all.filter((one) => one.group === group && one.machineId !== machineId);
  const spare = of - needed;
  const times = others.flatMap((one, i) => [
    `${i === 0 ? "" : "× "}( 1 −`,
    figure(`of the year ${one.machineId} is down`, one.down),
    ")",
  ]);
  return {
    title: `Failures on ${machineId} that stop the line`,
    result: figure(`share of the failures on ${machineId}`, stopShare),
    calculation: spare === 1 && others.length === of - 1 ? ["1 −", ...times] : [],
    note: `The line needs ${needed} of the ${of} machines of ${group}: a failure stops it while ${spare} or more of the others are down. ${machineId} itself is down ${figureText(down)} of the year: its failures a year × their mean hours ÷ 8760.`,
  };
}

const figureText = (share: number) => `${significant(100 * share, 2)} %`;

function unknownSteps(unknownLoss: number | null, drivers: readonly Driver[]): ArithmeticStep[] {
  const parts = unknownParts(drivers);
  if (unknownLoss === null) return [];
  return [
    {
      title: "What comes from not knowing",
      result: figure("from unknowns", unknownLoss, "EUR a year"),
      calculation: plusBetween(parts.map(({ label, loss }) => figure(label, loss))),
      note:
        parts.length === 0
          ? "Nothing unknown of its parts makes this line dearer."
          : "Stop loss of each part less its stop loss were all that is unknown of it found at its best.",
    },
  ];
}

function horizonSteps(
  horizon: LineResult["horizonLoss"],
  { discountRate }: LineDossier["assumptions"],
): ArithmeticStep[] {
  if (horizon === null) return [];
  const { years, loss, byYear } = horizon;
  return [
    {
      title: `Stop loss of ${quantity(years)} years`,
      result: figure(`loss of ${quantity(years)} years`, loss, "EUR"),
      calculation: plusBetween(byYear.map((year, i) => figure(`year ${i + 1}`, year))),
      note: `Month by month: units still in service × failure rate × share that stops the line × cost of a stop, at the no-spare chance of that month, later months discounted at ${quantity(Math.round(discountRate * 1000) / 10)} % a year. Rates, costs and stand-ins stay as they are today.`,
    },
  ];
}
