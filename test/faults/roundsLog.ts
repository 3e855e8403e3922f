import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { machine } from "@/test/bench/machine";
import { LAWS } from "@/test/faults/check";
import type { Victim } from "@/test/faults/installation";
import type { Counts } from "@/test/faults/ledger";

export interface Round {
  readonly victim: Victim;
  /** What was under way when it was killed. */
  readonly amid: readonly string[];
  /** Seconds from the start of what was killed to the first good answer. */
  readonly ready: number;
  /** What was acknowledged up to the end of the round, since the first. */
  readonly counts: Counts;
  readonly broken: readonly string[];
}

const FILE = join(import.meta.dirname, "rounds.md");

/** Writes the log of the rounds so far. */
export function writeLog(seed: number, rounds: readonly Round[], end: readonly string[]): void {
  const lines = rounds.map(({ victim, amid, ready, counts, broken }, i) => {
    const { events, changes, imports, reports, searches } = counts;
    const held = broken.length === 0 ? "all hold" : broken.join("; ");
    const cells = [i + 1, victim, amid.join(", ") || "nothing", ready.toFixed(1)];
    return `| ${[...cells, events, changes, imports, reports, searches, held].join(" | ")} |`;
  });
  const longest = Math.max(...rounds.map(({ ready }) => ready));
  const text = `# Rounds of kill -9

Written by \`npm run faults\`, not by hand. ${machine()} · seed ${seed}.

Two application processes on one durable PostgreSQL 18; kill -9 in the midst of a mixed load, then a new start of what
was killed, while the load goes on. Acknowledged since the first round is counted outside the server; after each round
the database is held to it by ${LAWS} laws (\`check.ts\`). The worker is a second process that works the same queue.

| round | killed | in the midst of | ready after, s | events | changes of stock | files | reports asked | searches | laws |
| ----: | ------ | --------------- | -------------: | -----: | ---------------: | ----: | ------------: | -------: | ---- |
${lines.join("\n")}

${rounds.length} rounds, ready again after ${longest.toFixed(1)} s at the longest. ${end.join(" ")}
`;
  writeFileSync(FILE, text);
}
