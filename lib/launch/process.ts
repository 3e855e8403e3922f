import { existsSync, readFileSync } from "node:fs";

/**
 * Whether the process runs and is of that program.
 *
 * A number may have passed to another program after a restart of the machine, so the command line is read
 * where the system shows it.
 */
export function isRunning(id: number, program: string): boolean {
  if (!Number.isInteger(id) || id <= 0) return false;
  try {
    process.kill(id, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ESRCH") return false;
  }
  const commandLine = `/proc/${id}/cmdline`;
  if (!existsSync(commandLine)) return true;
  const words = readFileSync(commandLine, "utf8").split("\0");
  // A process that has ended and was not yet collected has no command line.
  return words[0]?.includes(program) ?? false;
}

/** When the process started, in ticks since the machine did; undefined where the system does not show it. */
export function startOf(id: number): string | undefined {
  const file = `/proc/${id}/stat`;
  if (!existsSync(file)) return undefined;
  // The name, in parentheses, may hold spaces; the 20th field after it is the start.
  return readFileSync(file, "utf8").split(") ").at(-1)?.split(" ")[19];
}

/** Waits until the process is gone. @returns Whether it went within the time. */
export async function waitUntilGone(id: number, program: string, patienceMs: number): Promise<boolean> {
  const end = performance.now() + patienceMs;
  while (isRunning(id, program)) {
    if (performance.now() > end) return false;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return true;
}
