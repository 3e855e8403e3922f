import { database } from "@/lib/data/client";
import { loadExperience, loadRestorations } from "@/lib/data/group/loadExperience";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
const t = () => Number(process.hrtime.bigint()) / 1e9;
await database().$transaction(async (tx) => {
  let a = t();
  const r = await loadRestorations(tx, "2026-11-30"); console.log("restorations", r.length, t() - a); a = t();
  const e = await loadExperience(tx, "2026-11-30"); console.log("experience", e.length, t() - a); a = t();
  const i = await loadGroupInput(tx, "2026-11-30"); console.log("input", i.lines.length, i.installed.length, i.pools.length, t() - a); a = t();
  evaluate(i, likelyAssumptions); console.log("evaluate", t() - a);
}, { timeout: 1200000, maxWait: 10000 });
await database().$disconnect();
