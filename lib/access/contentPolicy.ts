/** Header of a request, set by the proxy, that hands the nonce of its answer to the page. */
export const NONCE = "x-nonce";

/** Header of a request, set by the proxy, that tells a layout which path and question are asked for. */
export const PATH = "x-path";

/**
 * What a page may load, as a Content-Security-Policy: its own origin's files, and of scripts only those that carry the
 * nonce of this very answer and what they load themselves.
 *
 * Style attributes are let through: charts and tables place their parts by them, and they run nothing.
 *
 * @param nonce A fresh random text for each answer, base64.
 */
export function contentPolicy(nonce: string): string {
  return Object.entries({
    "default-src": "'self'",
    "script-src": `'self' 'nonce-${nonce}' 'strict-dynamic'`,
    "style-src": `'self' 'nonce-${nonce}'`,
    "style-src-attr": "'unsafe-inline'",
    "img-src": "'self' data: blob:",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'self'",
    "frame-ancestors": "'none'",
  })
    .map(([what, from]) => `${what} ${from}`)
    .join("; ");
}

/**
 * What an answer that is no page may load: nothing, when it is data; files of its own origin, when it is a script,
 * which a thread of the browser may be made of.
 */
export function closedPolicy(isData: boolean): string {
  const from = isData ? "'none'" : "'self'";
  return `default-src ${from}; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;
}
