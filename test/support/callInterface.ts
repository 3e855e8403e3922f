import { actorOfKey } from "@/lib/access/accessKey";
import { serve } from "@/lib/interface/serve";

export interface Call {
  readonly method?: string;
  /** Below /api/v1, with its query. */
  readonly path: string;
  readonly token: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: unknown;
}

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly json: unknown;
}

/** A request as another system makes it, answered by what the route hands it to. */
export async function callInterface({ method = "GET", path, token, headers, body }: Call): Promise<Answer> {
  const url = new URL(`http://127.0.0.1/api/v1${path}`);
  const request = new Request(url, {
    method,
    headers: { Authorization: `Bearer ${token}`, ...headers },
    ...(body === undefined
      ? {}
      : { body: body instanceof Uint8Array ? (body as Uint8Array<ArrayBuffer>) : JSON.stringify(body) }),
  });
  const parts = url.pathname.split("/").slice(3);
  const answer = await serve(request, actorOfKey(request.headers.get("Authorization")), parts);
  const text = await answer.text();
  return { status: answer.status, headers: answer.headers, json: text === "" ? null : JSON.parse(text) };
}
