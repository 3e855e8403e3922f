import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL(".", import.meta.url));

export default defineConfig({
  resolve: {
    alias: {
      "@": root.slice(0, -1),
      "server-only": `${root}node_modules/server-only/empty.js`,
    },
  },
  test: {
    include: ["test/{unit,reference,property,outside,architecture,data}/**/*.test.{ts,tsx}"],
    // Tests of the database start servers, and a machine of two cores runs several at once.
    // Loading the modules anew for each file costs more than the tests; what they keep is closed by each file.
    isolate: false,
    // A test of the database waits half its time, so the worker Vitest leaves out on two cores has room.
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
    // A zone far from home, so that a date shifted by a zone shows.
    env: { TZ: "Pacific/Auckland" },
  },
});
