import type { NextConfig } from "next";

const config: NextConfig = {
  output: "standalone",
  serverExternalPackages: ["@react-pdf/renderer", "graphile-worker", "highs", "pg", "pptxgenjs"],
  // Letters that files are set in are read from the package while the server runs.
  outputFileTracingIncludes: {
    "/*": ["./node_modules/@fontsource/source-sans-3/files/*-normal.woff"],
  },
  poweredByHeader: false,
  // Two limits, both above the largest register file taken: the action's own, and that of the proxy before it.
  experimental: { serverActions: { bodySizeLimit: "64mb" }, proxyClientMaxBodySize: "64mb" },
};

export default config;
