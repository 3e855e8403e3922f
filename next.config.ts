import type { NextConfig } from "next";

const config: NextConfig = {
  output: "standalone",
  serverExternalPackages: ["graphile-worker", "highs", "pg"],
  poweredByHeader: false,
  // Two limits, both above the largest register file taken: the action's own, and that of the proxy before it.
  experimental: { serverActions: { bodySizeLimit: "64mb" }, proxyClientMaxBodySize: "64mb" },
};

export default config;
