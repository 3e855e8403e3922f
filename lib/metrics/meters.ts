import { collectDefaultMetrics, Gauge, Histogram, register } from "prom-client";

const SECONDS = [0.005, 0.02, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30];

/** One meter a process, however often this file is loaded into it. */
function histogram<L extends string>(name: string, help: string, labelNames: readonly L[]): Histogram<L> {
  const known = register.getSingleMetric(name) as Histogram<L> | undefined;
  return known ?? new Histogram({ name, help, labelNames: [...labelNames], buckets: SECONDS });
}

const requests = () =>
  histogram("ebbline_interface_request_seconds", "Requests of other systems: how many and how long.", [
    "method",
    "route",
    "status",
  ]);

const evaluations = () =>
  histogram(
    "ebbline_evaluation_seconds",
    "Evaluations of the group: whole ones, and steps after a change of stock.",
    ["kind"],
  );

/** Measures the answering of a request by its route, never by its address. */
export async function watchRequest(
  { method, route }: { readonly method: string; readonly route: string },
  answer: () => Promise<Response>,
): Promise<Response> {
  const stop = requests().startTimer({ method, route });
  try {
    const response = await answer();
    stop({ status: String(response.status) });
    return response;
  } catch (error) {
    stop({ status: "500" });
    throw error;
  }
}

/** Measures an evaluation. */
export async function watchEvaluation<T>(kind: "whole" | "step", compute: () => Promise<T>): Promise<T> {
  const stop = evaluations().startTimer({ kind });
  try {
    return await compute();
  } finally {
    stop();
  }
}

/** A count as it stands now, by the name of what is counted. */
export interface Standing {
  readonly name: string;
  readonly help: string;
  readonly label: string;
  readonly values: Readonly<Record<string, number>>;
}

/** Everything this process measured, with what stands in the database, as text for a collector. */
export async function metricsText(standings: readonly Standing[]): Promise<string> {
  if (!register.getSingleMetric("process_cpu_seconds_total")) collectDefaultMetrics();
  requests();
  evaluations();
  for (const { name, help, label, values } of standings) {
    const known = register.getSingleMetric(name) as Gauge | undefined;
    const gauge = known ?? new Gauge({ name, help, labelNames: [label] });
    gauge.reset();
    for (const [value, count] of Object.entries(values)) gauge.set({ [label]: value }, count);
  }
  return register.metrics();
}
