/**
 * Whether a request that changes something comes from a page of this installation, as the framework checks it for
 * actions: the page's address must be the one the request was sent to. Without an address, as from a script of another
 * program, it is not.
 */
export function isSameOrigin({ headers }: Pick<Request, "headers">): boolean {
  const origin = headers.get("origin");
  const host = headers.get("x-forwarded-host") ?? headers.get("host");
  if (origin === null || host === null || !URL.canParse(origin)) return false;
  return new URL(origin).host === host;
}
