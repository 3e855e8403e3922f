import { randomUUID } from "node:crypto";

export interface Request {
  readonly method: "POST" | "PATCH";
  /** Below /api/v1, with its query. */
  readonly path: string;
  readonly key: string;
  readonly body?: string;
  readonly type?: string;
}

const PAUSE_MS = 200;
const LONGEST_MS = 180_000;
const ANSWER_MS = 60_000;

/** Answers that say nothing of whether it was done, or ask to come again. */
const AGAIN = new Set([409, 429]);

/**
 * Sends a request under one name until it is answered, as a careful system does: again after a cut connection, a
 * server at fault, or one that asks to wait.
 */
export async function sendUntilAnswered(address: () => string, request: Request): Promise<unknown> {
  const name = randomUUID();
  const end = performance.now() + LONGEST_MS;
  for (;;) {
    const answer = await send(`${address()}/api/v1${request.path}`, request, name);
    if (answer && answer.status < 300) return answer.json;
    if (answer && answer.status < 500 && !AGAIN.has(answer.status))
      throw new Error(`${request.method} ${request.path}: ${answer.status} ${JSON.stringify(answer.json)}`);
    if (performance.now() > end) throw new Error(`${request.path} was not answered in time`);
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  }
}

/** One try; undefined when no answer came. */
export async function send(url: string, { method, key, body, type }: Request, name: string) {
  const headers = {
    Authorization: `Bearer ${key}`,
    "Idempotency-Key": name,
    "Content-Type": type ?? "application/json",
  };
  try {
    const signal = AbortSignal.timeout(ANSWER_MS);
    const answer = await fetch(url, { method, headers, signal, ...(body === undefined ? {} : { body }) });
    const text = await answer.text();
    // A server at fault answers with a page.
    return { status: answer.status, json: answer.status < 500 ? JSON.parse(text) : text };
  } catch {
    return undefined;
  }
}
