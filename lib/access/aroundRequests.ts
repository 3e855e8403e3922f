import http, { type IncomingMessage, type ServerResponse } from "node:http";

/** What is done around a request; `pass` has it answered. @returns Whether it was taken. */
export type Around = (request: IncomingMessage, answer: ServerResponse, pass: () => boolean) => boolean;

/** From now on each request of this process goes through this before anything answers it. */
export function aroundRequests(around: Around): void {
  const { emit } = http.Server.prototype;
  http.Server.prototype.emit = function (this: http.Server, event: string | symbol, ...rest: unknown[]) {
    const pass = () => Reflect.apply(emit, this, [event, ...rest]) as boolean;
    if (event !== "request") return pass();
    const [request, answer] = rest as [IncomingMessage, ServerResponse];
    return around(request, answer, pass);
  };
}
