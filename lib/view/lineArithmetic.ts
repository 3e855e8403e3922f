import { MOST_BORROWED_UNIT_YEARS } from "@/lib/reliability/borrow";
import type { Assumptions } from "@/lib/risk/assumptions";
import { type ArithmeticStep, type ArithmeticTerms, figure } from "@/lib/view/lineArithmeticStep";
import type { Driver } from "@/lib/view/lineDossier";
import { lossSteps, scoreSteps, stopsOf } from "@/lib/view/lineLossSteps";

/**
 * Opens the figures of one pool on a line: from counted events to failures, spares, hours, money and score.
 *
 * Each result is the one the table shows, and each calculation multiplies out to it.
 */
export function lineArithmetic(driver: Driver, terms: ArithmeticTerms): ArithmeticStep[] {
  return [
    ...rateSteps(driver, terms.assumptions),
    ...spareSteps(driver),
    ...lossSteps(driver, terms),
    ...scoreSteps(driver, terms),
  ];
}

function rateSteps(driver: Driver, assumptions: Assumptions): ArithmeticStep[] {
  const { removalRate, noFaultFoundShare, rateUnitYears } = assumptions.classes[driver.itemClass];
  const belief: ArithmeticStep = {
    title: "Belief about the class before any record",
    result: figure("class failure rate", removalRate * (1 - noFaultFoundShare), "per unit-year"),
    calculation: [
      figure("class removal rate", removalRate, "per unit-year"),
      "× ( 1 −",
      figure("removed without a fault", noFaultFoundShare),
      ")",
    ],
    note: `As stated in the assumptions in use, with their basis. It weighs as much as ${rateUnitYears} unit-years of records.`,
  };
  const steps =
    driver.pool === null
      ? [belief]
      : [belief, familyStep(driver.pool.failure), partStep(driver.pool.failure)];
  return [...steps, ...siteSteps(driver)];
}

type PoolRate = NonNullable<Driver["pool"]>["failure"];

function familyStep({ priorMean, priorUnitYears }: PoolRate): ArithmeticStep {
  return {
    title: "Failure rate of the family",
    result: figure("family failure rate", priorMean, "per unit-year"),
    calculation: [],
    note: `The class belief with all events of the family in the last five years. The part borrows it at a weight of ${Math.round(priorUnitYears)} unit-years, ${MOST_BORROWED_UNIT_YEARS} at most.`,
  };
}

function partStep(rate: PoolRate): ArithmeticStep {
  return {
    title: "Failure rate of the part, all sites",
    result: figure("part failure rate", rate.mean, "per unit-year"),
    calculation: [
      "(",
      figure("family failure rate", rate.priorMean, "per unit-year"),
      "×",
      figure("unit-years of weight", rate.priorUnitYears),
      "+",
      figure("failures", rate.events),
      ") ÷ (",
      figure("unit-years of weight", rate.priorUnitYears),
      "+",
      figure("unit-years in service", rate.unitYears),
      ")",
    ],
    note: "Failures of one common cause count once.",
  };
}

function siteSteps(driver: Driver): ArithmeticStep[] {
  const { atSite, pool, units, failuresPerYear } = driver;
  const rate = units === 0 ? 0 : failuresPerYear / units;
  const site: ArithmeticStep = {
    title: "Failure rate of the part at this site",
    result: figure("site failure rate", rate, "per unit-year"),
    calculation:
      pool === null
        ? []
        : [
            "(",
            figure("part failure rate", pool.failure.mean, "per unit-year"),
            "×",
            figure("unit-years of weight", Math.min(pool.failure.b, MOST_BORROWED_UNIT_YEARS)),
            "+",
            figure("failures here", atSite.failures),
            ") ÷ (",
            figure("unit-years of weight", Math.min(pool.failure.b, MOST_BORROWED_UNIT_YEARS)),
            "+",
            figure("unit-years in service here", atSite.unitYears),
            ")",
          ],
    note:
      pool === null
        ? "Nobody has read these parts: the class belief with the records of unidentified items of the class."
        : null,
  };
  const failures: ArithmeticStep = {
    title: "Failures on this line",
    result: figure("failures", failuresPerYear, "a year"),
    calculation: [
      figure("units on the line", units),
      "×",
      figure("site failure rate", rate, "per unit-year"),
    ],
    note: null,
  };
  return [site, failures, ...stopSteps(driver)];
}

function stopSteps(driver: Driver): ArithmeticStep[] {
  if (driver.stopShare === 1) return [];
  return [
    {
      title: "Failures that stop the line",
      result: stopsOf(driver),
      calculation: [
        figure("failures", driver.failuresPerYear, "a year"),
        "×",
        figure("share that stops the line", driver.stopShare),
      ],
      note: "Other machines can stand in: a failure stops the line only while too many of them are down already. A machine is down for the share of the year its own failures last.",
    },
  ];
}

const REASONS: Readonly<Record<string, string>> = {
  wrong_revision: "wrong revision",
  on_hold: "on hold",
  reserved: "reserved",
  unproven: "unproven",
  removed_untested: "removed, untested",
  beyond_repair: "beyond repair",
  storage: "long unpowered",
  not_counted: "not counted",
};

function spareSteps({ pool, noSpare }: Driver): ArithmeticStep[] {
  if (pool === null)
    return [
      {
        title: "Chance that no spare is at hand",
        result: figure("no-spare chance", noSpare),
        calculation: [],
        note: "Assumed: nobody knows the part, so nobody knows its spares.",
      },
    ];
  const book = pool.book ?? 0;
  const off = pool.deductions.filter((one) => one.pieces > 0);
  return [
    {
      title: "Spares that will work, all sites",
      result: figure("usable", pool.usable, "pieces"),
      calculation: [
        figure("on the books", book, "pieces"),
        ...off.flatMap((one) => ["−", figure(REASONS[one.reason] ?? one.reason, one.pieces, "pieces")]),
      ],
      note: pool.book === null ? "No lot has been counted; that is unknown, not none." : null,
    },
    {
      title: "Removals that draw on them, whole group",
      result: figure("removals", pool.removalsPerYear, "a year"),
      calculation: [
        figure("units in the group", pool.installed),
        "×",
        figure("removal rate", pool.removal.mean, "per unit-year"),
      ],
      note: `${pool.removal.events} removals in ${Math.round(pool.removal.unitYears)} unit-years, borrowed and counted as the failures above.`,
    },
    {
      title: "Chance that a failure finds the shelf empty",
      result: figure("no-spare chance", noSpare),
      calculation: [],
      note: "Mean over the next 12 months of the chance that removals not yet replaced have used up the usable pieces (gamma–Poisson count; order and repair times as recorded).",
    },
  ];
}
