import type { NextConfig } from "next";

const config: NextConfig = {
  output: "standalone",
  serverExternalPackages: ["highs", "pg"],
  poweredByHeader: false,
  experimental: { serverActions: { bodySizeLimit: "64mb" } },
};

export default config;
