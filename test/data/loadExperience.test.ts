import { expect, test, vi } from "vitest";
import { database } from "@/lib/data/client";
import { loadExperience } from "@/lib/data/group/loadExperience";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { freshDatabase } from "@/test/support/database";

// Loading a database takes its time on a busy machine.
vi.setConfig({ testTimeout: 240_000 });

const D0 = "2026-11-30";

test("some pools at one site are counted as the whole group counts them there", async () => {
  const fresh = await freshDatabase("experience");
  try {
    await load(fresh.url, "small", small());
    const all = await loadExperience(database(), D0);
    const site = await database().site.findUniqueOrThrow({ where: { code: "KAR" } });
    const here = all.filter(({ siteId }) => siteId === site.id);
    const unread = here.find(({ poolId }) => poolId.startsWith("unidentified:"));
    const wanted = [...here.filter(({ removals }) => removals > 0).slice(0, 3), ...(unread ? [unread] : [])];
    expect(wanted).toHaveLength(4);
    const poolIds = wanted.map(({ poolId }) => poolId);
    expect(await loadExperience(database(), D0, { siteId: site.id, poolIds })).toEqual(
      here.filter(({ poolId }) => poolIds.includes(poolId)),
    );
  } finally {
    await fresh.close();
  }
});
