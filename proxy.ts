import { randomBytes } from "node:crypto";
import { getSessionCookie } from "better-auth/cookies";
import { type NextRequest, NextResponse } from "next/server";
import { contentPolicy, NONCE, PATH } from "@/lib/access/contentPolicy";
import { sessionCookies } from "@/lib/access/sessionCookies";

const POLICY = "content-security-policy";

/** An address no page has. */
const NO_PAGE = "/no-such-page";

/** Pages for people who are not signed in. */
const OPEN_PAGES = ["/sign-in", "/first-admin", "/invitation"];

/**
 * Gives each page a policy with a nonce of its own, and sends the signed-out to the sign-in page. What a person may
 * see is decided where the data is read.
 */
export function proxy(request: NextRequest) {
  const { pathname, search } = request.nextUrl;
  if (isGarbled(request.nextUrl)) return withPolicy(request, new URL(NO_PAGE, request.url));
  if (getSessionCookie(request, sessionCookies()) || OPEN_PAGES.includes(pathname))
    return withPolicy(request);
  const target = new URL("/sign-in", request.url);
  if (pathname !== "/") target.searchParams.set("next", pathname + search);
  return NextResponse.redirect(target);
}

/** Half a letter, or the zero sign, which no text of the database may hold. */
function isGarbled({ pathname, searchParams }: URL): boolean {
  const asked = [...searchParams].flat();
  try {
    return [decodeURIComponent(pathname), ...asked].some((text) => text.includes("\0"));
  } catch {
    return true;
  }
}

function withPolicy(request: NextRequest, instead?: URL) {
  const nonce = randomBytes(16).toString("base64");
  const policy = contentPolicy(nonce);
  const headers = new Headers(request.headers);
  // The framework reads the nonce from the request and writes it onto each of its scripts.
  headers.set(POLICY, policy);
  headers.set(NONCE, nonce);
  headers.set(PATH, request.nextUrl.pathname + request.nextUrl.search);
  const passed = { request: { headers } };
  const answer = instead ? NextResponse.rewrite(instead, passed) : NextResponse.next(passed);
  answer.headers.set(POLICY, policy);
  return answer;
}

export const config = {
  matcher: ["/((?!api/|_next/|favicon|icon|card-worker).*)"],
};
