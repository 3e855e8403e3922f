import { databaseUrl } from "@/lib/env";
import { holdReviews } from "@/seed/holdReviews";
import { type Loaded, load, SeedRefusal } from "@/seed/load";
import { refuseForeign } from "@/seed/localDatabase";
import { large } from "@/seed/scenarios/large/large";
import { heldReviews } from "@/seed/scenarios/showcase/heldReviews";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { small } from "@/seed/scenarios/small";
import type { SeedTables } from "@/seed/tables";

const SCENARIOS: Readonly<Record<string, () => SeedTables>> = { showcase, small, large };

async function seed(name: string | undefined): Promise<readonly Loaded[]> {
  const build = Object.hasOwn(SCENARIOS, name ?? "") ? SCENARIOS[name ?? ""] : undefined;
  if (!name || !build)
    throw new SeedRefusal(`Name a scenario: npm run seed -- ${Object.keys(SCENARIOS).join(" | ")}.`);
  const url = databaseUrl();
  refuseForeign(url);
  const loaded = await load(url, name, build());
  if (name !== "showcase") return loaded;
  return [...loaded, { table: "Review", rows: await holdReviews(heldReviews) }];
}

try {
  const from = process.hrtime.bigint();
  const loaded = await seed(process.argv[2]);
  const seconds = Number(process.hrtime.bigint() - from) / 1e9;
  for (const { table, rows } of loaded) console.log(`${table}: ${rows.toLocaleString("en-GB")}`);
  console.log(`Written in ${seconds.toFixed(1)} s.`);
} catch (error) {
  console.error(error instanceof SeedRefusal ? error.message : error);
  process.exitCode = 1;
}
