import { getSessionCookie } from "better-auth/cookies";
import { type NextRequest, NextResponse } from "next/server";

/** Sends the signed-out to the sign-in page. What a person may see is decided where the data is read. */
export function proxy(request: NextRequest) {
  if (getSessionCookie(request)) return NextResponse.next();
  const target = new URL("/sign-in", request.url);
  const { pathname, search } = request.nextUrl;
  if (pathname !== "/") target.searchParams.set("next", pathname + search);
  return NextResponse.redirect(target);
}

export const config = {
  matcher: ["/((?!api/|_next/|sign-in|first-admin|favicon|icon).*)"],
};
