export type EarnedValueInput = {
  readonly budgetAtCompletion: number;
  readonly planned: number;
  readonly earned: number;
  readonly actual: number;
};

const ratio = (top: number, bottom: number): number | null => (bottom === 0 ? null : top / bottom);

/**
 * Tells whether a project earns its budget and its calendar, and what it will cost at the end.
 *
 * cv = EV - AC, sv = EV - PV, cpi = EV / AC, spi = EV / PV, tcpi = (BAC - EV) / (BAC - AC).
 * eac.trend = BAC / cpi; eac.plannedRest = AC + BAC - EV; eac.costAndSchedule = AC + (BAC - EV) / (cpi * spi).
 * etc and vac follow eac.trend. A ratio with a zero divisor is null: undefined, neither infinite nor zero.
 *
 * @param input Amounts in one currency, cumulative to one date, finite and >= 0.
 * @throws {RangeError} naming the argument and its value.
 * @see GAO-09-3SP, Cost Estimating and Assessment Guide (formulas from memory).
 */
export function earnedValue(input: EarnedValueInput) {
  for (const [name, value] of Object.entries(input)) {
    if (!(Number.isFinite(value) && value >= 0))
      throw new RangeError(`${name} must be finite and >= 0, got ${value}`);
  }
  const { budgetAtCompletion, planned, earned, actual } = input;
  const rest = budgetAtCompletion - earned;
  const cpi = ratio(earned, actual);
  const spi = ratio(earned, planned);
  const trend = cpi === null ? null : ratio(budgetAtCompletion, cpi);
  const speed = cpi === null || spi === null ? null : ratio(rest, cpi * spi);
  return {
    cv: earned - actual,
    sv: earned - planned,
    cpi,
    spi,
    eac: { trend, plannedRest: actual + rest, costAndSchedule: speed === null ? null : actual + speed },
    etc: trend === null ? null : trend - actual,
    vac: trend === null ? null : budgetAtCompletion - trend,
    tcpi: ratio(rest, budgetAtCompletion - actual),
  };
}
