import { type ArithmeticStep, type ArithmeticTerms, figure } from "@/lib/view/lineArithmeticStep";
import type { Driver } from "@/lib/view/lineDossier";

/** From failures and hours to the money of a pool; nothing without a cost per hour. */
export function lossSteps(driver: Driver, terms: ArithmeticTerms): ArithmeticStep[] {
  const { costWithSpare, costWithoutSpare, stopWithSpare, stopWithoutSpare } = driver;
  const { baseLoss, shortageLoss } = driver;
  if (terms.costPerHour === null || costWithSpare === null || costWithoutSpare === null) return [];
  if (baseLoss === null || shortageLoss === null || !stopWithSpare || !stopWithoutSpare) return [];
  const stops = stopsOf(driver);
  const noSpare = figure("no-spare chance", driver.noSpare);
  const sum: ArithmeticStep = {
    title: "Stop loss of the part on this line",
    result: figure("stop loss", baseLoss + shortageLoss, "EUR a year"),
    calculation: [
      figure("base part", baseLoss, "EUR a year"),
      "+",
      figure("shortage part", shortageLoss, "EUR a year"),
    ],
    note: null,
  };
  return [
    costStep("Cost of a stop with a spare", { ...stopWithSpare, cost: costWithSpare }, terms),
    costStep("Cost of a stop without a spare", { ...stopWithoutSpare, cost: costWithoutSpare }, terms),
    {
      title: "Base part: stops with a spare at hand",
      result: figure("base part", baseLoss, "EUR a year"),
      calculation: [
        stops,
        "× ( 1 −",
        noSpare,
        ") ×",
        figure("cost with a spare", costWithSpare, "EUR a stop"),
      ],
      note: null,
    },
    {
      title: "Shortage part: stops that find no spare",
      result: figure("shortage part", shortageLoss, "EUR a year"),
      calculation: [stops, "×", noSpare, "×", figure("cost without a spare", costWithoutSpare, "EUR a stop")],
      note: null,
    },
    sum,
    ...unknownStep(driver, terms),
    ...shareOfLoss(baseLoss + shortageLoss, terms.lineLoss),
  ];
}

/** Failures that stop the line: all of them, but where other machines can stand in. */
export function stopsOf({ failuresPerYear, stopShare }: Driver) {
  return stopShare === 1
    ? figure("failures", failuresPerYear, "a year")
    : figure("stops", failuresPerYear * stopShare, "a year");
}

interface StopMade {
  readonly cost: number;
  readonly hoursBeyond: number;
  readonly stepChances: readonly number[];
}

function costStep(title: string, made: StopMade, terms: ArithmeticTerms): ArithmeticStep {
  const { fixedCost, costSteps } = terms;
  const buffer = terms.bufferHours === null ? "0 h buffer (not known)" : `${terms.bufferHours} h buffer`;
  const passed =
    costSteps.length === 0 ? "" : " A step counts by the chance that a stop lasts longer than its hours.";
  return {
    title,
    result: figure("cost", made.cost, "EUR a stop"),
    calculation: [
      ...(fixedCost === null || fixedCost === 0 ? [] : [figure("EUR fixed", fixedCost), "+"]),
      figure("mean hours beyond the buffer", made.hoursBeyond, "h"),
      "×",
      figure("EUR an hour", terms.costPerHour ?? 0),
      "×",
      figure("share overtime cannot recover", terms.unrecoveredShare),
      ...costSteps.flatMap(({ afterHours, cost }, i) => [
        "+",
        figure(`EUR step at ${afterHours} h`, cost),
        "×",
        figure("chance to pass it", made.stepChances[i] ?? 0),
      ]),
    ],
    note: `Mean of the hours that last beyond the ${buffer}, over long and short stops; more than the mean stop less the buffer.${passed}`,
  };
}

/** What of the loss would go were everything unknown of the part found at its best. */
function unknownStep(
  { unknownLoss, baseLoss, shortageLoss }: Driver,
  terms: ArithmeticTerms,
): ArithmeticStep[] {
  if (!unknownLoss) return [];
  const loss = (baseLoss ?? 0) + (shortageLoss ?? 0);
  const { uncountedMost } = terms.assumptions;
  return [
    {
      title: "Of it, what comes from not knowing",
      result: figure("from unknowns", unknownLoss, "EUR a year"),
      calculation: [
        figure("stop loss", loss, "EUR a year"),
        "−",
        figure("stop loss at the best state", loss - unknownLoss, "EUR a year"),
      ],
      note: `Best state: each lot not counted holds ${Math.floor(uncountedMost)} pieces, pieces of unknown last power-up were powered today, an undated part can be ordered, a part not identified always has a spare. Buffers and lead times stay as assumed.`,
    },
  ];
}

function shareOfLoss(loss: number, lineLoss: number | null): ArithmeticStep[] {
  if (lineLoss === null || lineLoss === 0) return [];
  return [
    {
      title: "Share of the line's stop loss",
      result: figure("share", loss / lineLoss),
      calculation: [
        figure("stop loss of the part", loss, "EUR a year"),
        "÷",
        figure("stop loss of the line", lineLoss, "EUR a year"),
      ],
      note: null,
    },
  ];
}

/** From the three parts to what the pool adds to the score. */
export function scoreSteps(driver: Driver, { assumptions, lineScore }: ArithmeticTerms): ArithmeticStep[] {
  const { stage, spares, repair } = assumptions.weights;
  const severity = stage * driver.stagePart + spares * driver.sparesPart + repair * driver.repairPart;
  return [
    {
      title: "How hard a failure would be to answer",
      result: figure("severity", severity),
      calculation: [
        figure("weight of stage", stage),
        "×",
        figure("stage part", driver.stagePart),
        "+",
        figure("weight of spares", spares),
        "×",
        figure("spares part", driver.sparesPart),
        "+",
        figure("weight of repair", repair),
        "×",
        figure("repair part", driver.repairPart),
      ],
      note: "Weights as stated in the assumptions in use; they come from no standard.",
    },
    {
      title: "Chance of a stop within the year, times severity",
      result: figure("risk of the part", driver.failureChance * severity),
      calculation: [figure("stop chance", driver.failureChance), "×", figure("severity", severity)],
      note: "Score of the line = 100 × ( 1 − the product over its parts of ( 1 − risk of the part ) ).",
    },
    {
      title: "What the part adds to the score",
      result: figure("score points", lineScore * driver.share),
      calculation: [figure("score of the line", lineScore), "×", figure("share of the part", driver.share)],
      note: "Share: ln( 1 − risk of the part ) over the sum of these on the line.",
    },
  ];
}
