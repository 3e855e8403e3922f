import { spawn } from "node:child_process";
import { projectFolder } from "./folders";

interface Setting {
  readonly env?: Readonly<Record<string, string>>;
  /** Ends the program when it fires. */
  readonly signal?: AbortSignal;
  /** "quiet" keeps the output and shows it only when the program fails. */
  readonly output?: "shown" | "quiet";
}

/** Runs a Node program of the project to its end. @returns Whether it succeeded. */
export function runNode(args: readonly string[], setting: Setting = {}): Promise<boolean> {
  const quiet = setting.output === "quiet";
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd: projectFolder,
      env: { ...process.env, ...setting.env },
      stdio: ["ignore", quiet ? "pipe" : "inherit", quiet ? "pipe" : "inherit"],
      ...(setting.signal ? { signal: setting.signal } : {}),
    });
    const said: Buffer[] = [];
    for (const stream of [child.stdout, child.stderr]) stream?.on("data", (part) => said.push(part));
    child.once("error", reject);
    child.once("close", (code) => {
      if (code !== 0) process.stderr.write(Buffer.concat(said));
      resolve(code === 0);
    });
  });
}
