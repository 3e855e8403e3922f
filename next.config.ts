import type { NextConfig } from "next";

/** For every answer, pages and files alike; the policy of what a page may load is made for each page in proxy.ts. */
const HEADERS = {
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "same-origin",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
};

const config: NextConfig = {
  output: "standalone",
  serverExternalPackages: [
    "@react-pdf/renderer",
    "graphile-worker",
    "highs",
    "pg",
    "pptxgenjs",
    "prom-client",
  ],
  // Letters that files are set in are read from the package while the server runs.
  outputFileTracingIncludes: {
    "/*": ["./node_modules/@fontsource/source-sans-3/files/*-normal.woff"],
  },
  // npm test checks the types, of the tests too; whoever starts the app need not wait for that again.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  headers: async () => [
    { source: "/:path*", headers: Object.entries(HEADERS).map(([key, value]) => ({ key, value })) },
  ],
  // Two limits, both above the largest register file taken: the action's own, and that of the proxy before it.
  experimental: { serverActions: { bodySizeLimit: "64mb" }, proxyClientMaxBodySize: "64mb" },
};

export default config;
