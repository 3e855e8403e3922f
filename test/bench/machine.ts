import { availableParallelism, loadavg, totalmem } from "node:os";

/** The day, the machine and what it does besides: what a figure means nothing without. */
export function machine(): string {
  const [minute] = loadavg();
  return (
    `${new Date().toISOString().slice(0, 10)} · Node ${process.version} · ${availableParallelism()} cores · ` +
    `${Math.round(totalmem() / 2 ** 30)} GB · load ${minute?.toFixed(1)}`
  );
}
