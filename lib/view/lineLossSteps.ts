import { type ArithmeticStep, type ArithmeticTerms, figure } from "@/lib/view/lineArithmeticStep";
import type { Driver } from "@/lib/view/lineDossier";

/** From failures and hours to the money of a pool; nothing without a cost per hour. */
export function lossSteps(driver: Driver, terms: ArithmeticTerms): ArithmeticStep[] {
  const { costWithSpare, costWithoutSpare, baseLoss, shortageLoss } = driver;
  if (terms.costPerHour === null || costWithSpare === null || costWithoutSpare === null) return [];
  if (baseLoss === null || shortageLoss === null) return [];
  const failures = figure("failures", driver.failuresPerYear, "a year");
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
    costStep("Cost of a stop with a spare", costWithSpare, terms),
    costStep("Cost of a stop without a spare", costWithoutSpare, terms),
    {
      title: "Base part: stops with a spare at hand",
      result: figure("base part", baseLoss, "EUR a year"),
      calculation: [
        failures,
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
      calculation: [
        failures,
        "×",
        noSpare,
        "×",
        figure("cost without a spare", costWithoutSpare, "EUR a stop"),
      ],
      note: null,
    },
    sum,
    ...shareOfLoss(baseLoss + shortageLoss, terms.lineLoss),
  ];
}

function costStep(title: string, cost: number, terms: ArithmeticTerms): ArithmeticStep {
  const perHour = terms.costPerHour ?? 0;
  const weight = perHour * terms.unrecoveredShare;
  const hours = weight === 0 ? 0 : cost / weight;
  const buffer = terms.bufferHours === null ? "0 h buffer (not known)" : `${terms.bufferHours} h buffer`;
  return {
    title,
    result: figure("cost", cost, "EUR a stop"),
    calculation: [
      figure("mean hours beyond the buffer", hours, "h"),
      "×",
      figure("EUR an hour", perHour),
      "×",
      figure("share overtime cannot recover", terms.unrecoveredShare),
    ],
    note: `Mean of the hours that last beyond the ${buffer}, over long and short stops; more than the mean stop less the buffer.`,
  };
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
      title: "Chance of a failure within the year, times severity",
      result: figure("risk of the part", driver.failureChance * severity),
      calculation: [figure("failure chance", driver.failureChance), "×", figure("severity", severity)],
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
