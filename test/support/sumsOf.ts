/** Recorded stops, hours each, as the evaluation takes them. */
export function sumsOf(hours: readonly number[]) {
  const sum = (value: (hour: number) => number) => hours.reduce((all, hour) => all + value(hour), 0);
  return {
    stops: hours.length,
    sumLog: sum(Math.log),
    sumLogSquared: sum((hour) => Math.log(hour) ** 2),
    sumHours: sum((hour) => hour),
  };
}
