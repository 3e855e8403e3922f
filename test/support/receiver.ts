import { createServer, type IncomingHttpHeaders } from "node:http";
import type { AddressInfo } from "node:net";

export interface Received {
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** A system that is told of changes: a real server, which answers as it is set to. */
export async function startReceiver() {
  const received: Received[] = [];
  const answers: { status: number; headers?: Record<string, string> }[] = [];
  const server = createServer((request, response) => {
    let body = "";
    request.on("data", (piece) => {
      body += piece;
    });
    request.on("end", () => {
      received.push({ headers: request.headers, body });
      const { status, headers = {} } = answers.shift() ?? { status: 200 };
      response.writeHead(status, headers).end(status === 200 ? "taken" : "not now");
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/hook`,
    received,
    /** Statuses of the next answers, in turn; then 200. */
    answerWith: (...next: { status: number; headers?: Record<string, string> }[]) => answers.push(...next),
    stop: () => new Promise<void>((resolve) => server.close(() => resolve())),
  };
}
