import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { Client } from "pg";

/** The rows a refresh reads, table by table, by nothing but the driver; `window` keeps events to the years that count. */
const TABLES: readonly { readonly name: string; readonly sql: (window: string) => string }[] = [
  {
    name: "events",
    sql: (window) =>
      `SELECT "siteId", "positionId", "partId", "itemClass", "kind", "happenedAt", "downtimeHours", "spareAtHand",
        "commonCause" FROM "Event" ${window}`,
  },
  {
    name: "positions",
    sql: () => `SELECT "id", "machineId", "axisId", "partId", "itemClass" FROM "Position"`,
  },
  { name: "placements", sql: () => `SELECT "positionId", "unitId", "fromOn", "untilOn" FROM "Placement"` },
  { name: "units", sql: () => `SELECT "id", "partId" FROM "Unit"` },
  { name: "axes", sql: () => `SELECT "id", "inServiceYear" FROM "Axis"` },
  { name: "machines", sql: () => `SELECT "id", "lineId", "inServiceYear" FROM "Machine"` },
  { name: "lines", sql: () => `SELECT * FROM "Line"` },
  { name: "parts", sql: () => `SELECT * FROM "Part"` },
  { name: "facts", sql: () => `SELECT * FROM "LifecycleFact"` },
  {
    name: "lots",
    sql: () => `SELECT "partId", "siteId", "state", "quantity", "lastPoweredOn" FROM "StockLot"`,
  },
];

export interface BareReading {
  readonly rows: number;
  readonly seconds: number;
}

/** Fetches every row into JavaScript, table by table, as the driver gives them. */
export async function readBare(url: string, window: string): Promise<BareReading> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    const from = performance.now();
    let rows = 0;
    for (const { sql } of TABLES) rows += (await client.query(sql(window))).rows.length;
    return { rows, seconds: (performance.now() - from) / 1000 };
  } finally {
    await client.end();
  }
}

/** The same by a process of its own: a million rows at once are none of the engine's memory. */
export async function readBareAlone(url: string, window: string): Promise<BareReading> {
  const script = `import("./test/bench/bareReading.ts").then(async ({ readBare }) =>
    process.stdout.write(JSON.stringify(await readBare(process.argv[1], process.argv[2]))))`;
  const { stdout } = await promisify(execFile)(process.execPath, [
    "--import",
    "tsx",
    "-e",
    script,
    url,
    window,
  ]);
  return JSON.parse(stdout) as BareReading;
}
