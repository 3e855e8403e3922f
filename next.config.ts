import type { NextConfig } from "next";

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
    // What an empty installation offers to try it with.
    "/api/example/[file]": ["./seed/registers/group-lifecycle.csv", "./seed/registers/VEL-*.csv"],
  },
  // npm test checks the types, of the tests too; whoever starts the app need not wait for that again.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  // Two limits, both above the largest register file taken: the action's own, and that of the proxy before it.
  experimental: { serverActions: { bodySizeLimit: "64mb" }, proxyClientMaxBodySize: "64mb" },
};

export default config;
