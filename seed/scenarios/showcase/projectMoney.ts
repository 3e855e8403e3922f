import type { CostClass } from "@/lib/schema/costClass";
import type {
  BudgetItemRow,
  ChangeAmountRow,
  ChangeOrderRow,
  ClassForecastRow,
  MonthRateRow,
} from "@/seed/moneyTables";
import { projectId } from "@/seed/scenarios/showcase/projects";
import { seedId } from "@/seed/seedId";

type ByClass = Partial<Record<CostClass, string>>;

interface ChangeSpec extends Omit<ChangeOrderRow, "id" | "projectId" | "number" | "askedBy"> {
  readonly amounts: ByClass;
}

interface MoneySpec {
  /** Original budget by class: the project's budget to the last unit. */
  readonly items: ByClass;
  /** What each class still needs beyond paid and ordered; with those it is the lead's forecast. */
  readonly toOrder: ByClass;
  readonly statedOn: string;
  readonly changes: readonly ChangeSpec[];
}

const LEAD = "Project lead";
const MANAGER = "Plant manager";
const asked = { state: "asked", decidedBy: null, decidedOn: null, decisionWhy: null } as const;
const approved = (decidedOn: string) =>
  ({ state: "approved", decidedBy: MANAGER, decidedOn, decisionWhy: null }) as const;

/** Karlsvik used its contingency up before the motors were found unmatched; what those cost is asked for and open. */
const MONEY: Readonly<Record<string, MoneySpec>> = {
  "KAR-02-R1": {
    items: {
      ...{ drives: "1750000.00", controllers: "420000.00", engineering: "760000.00" },
      ...{ installation: "1560000.00", training: "110000.00", contingency: "300000.00" },
    },
    toOrder: {
      ...{ drives: "380000.00", controllers: "390000.00", engineering: "260000.00" },
      ...{ installation: "420000.00", training: "110000.00" },
    },
    statedOn: "2026-11-16",
    changes: [
      {
        what: "Wider mounting plates in three panels",
        why: "The new drives are 18 mm wider than those on the drawings of 2009.",
        ...{ source: "contingency", askedOn: "2026-05-22", ...approved("2026-06-05") },
        amounts: { installation: "120000.00" },
      },
      {
        what: "Program conversion: 14 routines instead of 6",
        why: "Eight routines of the old motion network were found in use during conversion.",
        ...{ source: "contingency", askedOn: "2026-08-28", ...approved("2026-09-04") },
        amounts: { engineering: "180000.00" },
      },
      {
        what: "11 motors without a match: special flanges, survey and adapters",
        why: "Eleven motors have no matching flange and feedback. It was found after the drives were ordered.",
        ...{ source: "new_money", askedOn: "2026-11-09", ...asked },
        amounts: { drives: "610000.00", engineering: "200000.00" },
      },
    ],
  },
  "VEL-09-R1": {
    items: {
      ...{ drives: "150000.00", engineering: "64000.00", installation: "74000.00" },
      ...{ training: "10000.00", contingency: "12000.00" },
    },
    toOrder: { drives: "4000.00", engineering: "6000.00", installation: "85100.00", training: "10000.00" },
    statedOn: "2026-11-23",
    changes: [
      {
        what: "A spare drive of each size with the order",
        why: "The first months after the change fail more often.",
        ...{ source: "new_money", askedOn: "2026-10-05", state: "declined" },
        ...{
          decidedBy: MANAGER,
          decidedOn: "2026-10-16",
          decisionWhy: "First spares are in the budget already.",
        },
        amounts: { drives: "18000.00" },
      },
    ],
  },
  "THO-01-S1": {
    items: {
      ...{ controllers: "24000.00", engineering: "18000.00", installation: "18000.00" },
      contingency: "4000.00",
    },
    toOrder: {
      ...{ controllers: "5100.00", engineering: "600.00", installation: "20000.00" },
      contingency: "4000.00",
    },
    statedOn: "2026-11-27",
    changes: [],
  },
};

/** Rates finance booked at, beside the budget rates: units for one EUR in September, October and November 2026. */
const MONTH_RATES: Readonly<Record<string, readonly number[]>> = {
  PLN: [4.27, 4.31, 4.36],
  SEK: [11.24, 11.18, 11.42],
  USD: [1.12, 1.1, 1.08],
  MXN: [20.3, 20.6, 20.9],
  GBP: [0.87, 0.865, 0.872],
};
const MONTHS = ["2026-09-01", "2026-10-01", "2026-11-01"] as const;

const classes = (amounts: ByClass) => Object.entries(amounts) as [CostClass, string][];
const projects = Object.entries(MONEY);

function budgetItems(): BudgetItemRow[] {
  return projects.flatMap(([code, { items }]) =>
    classes(items).map(([costClass, amount]) => ({ projectId: projectId(code), costClass, amount })),
  );
}

function classForecasts(): ClassForecastRow[] {
  return projects.flatMap(([code, { toOrder, statedOn }]) =>
    classes(toOrder).map(([costClass, amount]) => ({
      ...{ projectId: projectId(code), costClass, toOrder: amount, statedOn, statedBy: LEAD },
    })),
  );
}

const changeId = (code: string, number: number) => seedId("ChangeOrder", `${code}/${number}`);

function changeOrders(): ChangeOrderRow[] {
  return projects.flatMap(([code, { changes }]) =>
    changes.map(({ amounts: _, ...change }, i) => ({
      ...{ id: changeId(code, i + 1), projectId: projectId(code), number: i + 1, askedBy: LEAD, ...change },
    })),
  );
}

function changeAmounts(): ChangeAmountRow[] {
  return projects.flatMap(([code, { changes }]) =>
    changes.flatMap(({ amounts }, i) =>
      classes(amounts).map(([costClass, amount]) => ({ changeId: changeId(code, i + 1), costClass, amount })),
    ),
  );
}

function monthRates(): MonthRateRow[] {
  return Object.entries(MONTH_RATES).flatMap(([currency, rates]) =>
    MONTHS.map((month, i) => ({
      ...{ currency, month, perEuro: rates[i] ?? 0 },
      ...{ source: "Group treasury, rates of the month", recordedBy: "Group controller" },
    })),
  );
}

/** Budgets by class, their changes, what is still to be ordered, and rates by month. */
export const projectMoneyTables = () => ({
  BudgetItem: budgetItems(),
  ChangeOrder: changeOrders(),
  ChangeAmount: changeAmounts(),
  ClassForecast: classForecasts(),
  MonthRate: monthRates(),
});
