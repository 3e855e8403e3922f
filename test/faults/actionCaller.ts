import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { builtServer } from "@/lib/launch/build";

interface Manifest {
  readonly node: Readonly<Record<string, { readonly filename?: string; readonly exportedName?: string }>>;
}

/** The number under which the built server knows a page's action. */
export function actionNumber(file: string, name: string): string {
  const path = join(dirname(builtServer), ".next/server/server-reference-manifest.json");
  const { node } = JSON.parse(readFileSync(path, "utf8")) as Manifest;
  const found = Object.entries(node).find(
    ([, action]) => action.filename === file && action.exportedName === name,
  );
  if (!found) throw new Error(`the built server has no action ${name} of ${file}`);
  return found[0];
}

/** Signs in as the sign-in page does. @returns The cookies. */
export async function signInAs(address: string, email: string, password: string): Promise<string> {
  const answer = await fetch(`${address}/api/auth/sign-in/email`, {
    method: "POST",
    headers: { "Content-Type": "application/json", Origin: address },
    body: JSON.stringify({ email, password }),
  });
  if (!answer.ok) throw new Error(`${email} could not sign in: ${answer.status} ${await answer.text()}`);
  return answer.headers
    .getSetCookie()
    .map((cookie) => cookie.split(";")[0])
    .join("; ");
}

export interface ActionCall {
  readonly address: string;
  readonly path: string;
  readonly action: string;
  readonly cookie: string;
  readonly input: unknown;
}

/** Presses a button of a page. @returns What the action came to; undefined when no answer came. */
export async function callAction({ address, path, action, cookie, input }: ActionCall): Promise<unknown> {
  try {
    const answer = await fetch(`${address}${path}`, {
      method: "POST",
      headers: {
        ...{ "Next-Action": action, Accept: "text/x-component", "Content-Type": "text/plain;charset=UTF-8" },
        ...{ Origin: address, Cookie: cookie },
      },
      body: JSON.stringify([input]),
      signal: AbortSignal.timeout(60_000),
    });
    const line = /^\w+:(\{"ok":.*\})$/m.exec(await answer.text())?.[1];
    return line === undefined ? undefined : JSON.parse(line);
  } catch {
    return undefined;
  }
}
