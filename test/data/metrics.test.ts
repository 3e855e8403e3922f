import { register } from "prom-client";
import { afterAll, beforeAll, expect, it } from "vitest";
import { GET } from "@/app/api/metrics/route";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { startJobs } from "@/lib/jobs/startJobs";
import { callInterface } from "@/test/support/callInterface";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites } from "../support/twoSites";

const TOKEN = "of-the-collector-of-a-test";
const before = process.env.EBBLINE_METRICS_TOKEN;
let made: FreshDatabase;
beforeAll(async () => {
  made = await freshDatabase("metrics");
  await makeTwoSites();
  await (await startJobs()).stop();
  register.clear();
});
afterAll(async () => {
  if (before === undefined) delete process.env.EBBLINE_METRICS_TOKEN;
  else process.env.EBBLINE_METRICS_TOKEN = before;
  register.clear();
  await made.close();
});

const ask = (token?: string) =>
  GET(
    new Request("http://127.0.0.1/api/metrics", {
      headers: token === undefined ? {} : { Authorization: `Bearer ${token}` },
    }),
  );

it("nobody reads the metrics without the token of the environment, and without one set nobody at all", async () => {
  delete process.env.EBBLINE_METRICS_TOKEN;
  expect([(await ask()).status, (await ask(TOKEN)).status, (await ask("")).status]).toEqual([404, 404, 404]);
  process.env.EBBLINE_METRICS_TOKEN = TOKEN;
  expect([(await ask()).status, (await ask(`${TOKEN}x`)).status, (await ask(TOKEN)).status]).toEqual([
    404, 404, 200,
  ]);
});

it("counts requests by route and status, evaluations, and what stands in the database", async () => {
  process.env.EBBLINE_METRICS_TOKEN = TOKEN;
  await currentEvaluation("2026-11-30");
  await callInterface({ path: "/lines/0190a000-0000-7000-8000-000000000000", token: "none" });
  await callInterface({ path: "/lines", token: "none" });
  const lines = (await (await ask(TOKEN)).text()).split("\n");
  const figureOf = (start: string) =>
    Number(
      lines
        .find((line) => line.startsWith(`${start} `))
        ?.split(" ")
        .at(-1),
    );
  const requests = (route: string) =>
    figureOf(`ebbline_interface_request_seconds_count{method="GET",route="${route}",status="401"}`);
  expect([requests("/api/v1/lines"), requests("/api/v1/unknown")]).toEqual([1, 1]);
  expect(lines.some((line) => line.includes("0190a000"))).toBe(false);
  expect(figureOf('ebbline_evaluation_seconds_count{kind="whole"}')).toBe(1);
  expect(figureOf('ebbline_evaluation_seconds_sum{kind="whole"}')).toBeGreaterThan(0);
  expect(figureOf('ebbline_data_version{of="records"}')).toBe(0);
  expect(figureOf('ebbline_database_connections{state="active"}')).toBeGreaterThanOrEqual(1);
  expect(figureOf("process_resident_memory_bytes")).toBeGreaterThan(1e6);
});
