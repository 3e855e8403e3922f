import { authUrl } from "@/lib/env";

/**
 * Names and marks of the sign-in's cookies: under https their name itself has the browser send them by https alone,
 * to this host alone (`__Host-`, RFC 6265bis). Over plain http, as on this machine itself, no such name is taken.
 */
export function sessionCookies() {
  const secure = authUrl().startsWith("https:");
  return {
    cookiePrefix: secure ? "__Host-better-auth" : "better-auth",
    // Else the library would put the weaker prefix before it.
    useSecureCookies: false,
    defaultCookieAttributes: { secure },
  };
}
