import type { ServerResponse } from "node:http";
import { aroundRequests } from "@/lib/access/aroundRequests";
import { closedPolicy } from "@/lib/access/contentPolicy";

/** For a year a browser comes by https alone, once it came so (RFC 6797), and so to what lies under this name. */
const ONLY_HTTPS = "max-age=31536000; includeSubDomains";

/** What the product is asked by; TRACE, which gives back what was sent, is not among them. */
const METHODS = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"];

/** For every answer, pages, files and errors alike, unless it says otherwise itself. */
const HEADERS = {
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "same-origin",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
};

/** What an answer to this path says where it says nothing of its own; a page's policy is made for it in proxy.ts. */
function usualHeaders(path: string, isSecure: boolean): Readonly<Record<string, string>> {
  const isData = path.startsWith("/api/");
  return {
    ...HEADERS,
    "Content-Security-Policy": closedPolicy(isData),
    ...(isData ? { "Cache-Control": "no-store" } : {}),
    ...(isSecure ? { "Strict-Transport-Security": ONLY_HTTPS } : {}),
  };
}

/** From now on each answer of this process has the usual headers, and other methods are refused. */
export function dressAnswers(isSecure: () => boolean): void {
  aroundRequests((request, answer, pass) => {
    dress(answer, usualHeaders(request.url ?? "/", isSecure()));
    return METHODS.includes(request.method ?? "") ? pass() : refuse(answer);
  });
}

/** Fills in at the last moment what nobody has said until then. */
function dress(answer: ServerResponse, usual: Readonly<Record<string, string>>): void {
  const { writeHead } = answer;
  answer.writeHead = function (this: ServerResponse, ...said: unknown[]) {
    for (const [name, value] of Object.entries(usual)) if (!this.hasHeader(name)) this.setHeader(name, value);
    return Reflect.apply(writeHead, this, said) as ServerResponse;
  };
}

function refuse(answer: ServerResponse): boolean {
  answer.writeHead(405, { Allow: METHODS.join(", "), "Content-Length": 0 }).end();
  return true;
}
