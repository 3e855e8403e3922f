import { database } from "@/lib/data/client";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";

const asOf = process.argv[2] ?? "2026-11-30";
const input = await database().$transaction((tx) => loadGroupInput(tx, asOf));
const r = evaluate(input, likelyAssumptions);
const code = new Map(input.lines.map((l) => [l.id, l.code]));
const rows = r.lines
  .map((l) => ({
    line: code.get(l.lineId),
    score: +l.score.toFixed(1),
    loss: Math.round(l.stopLoss?.mean ?? 0),
    lo: Math.round(l.stopLoss?.low ?? 0),
    hi: Math.round(l.stopLoss?.high ?? 0),
    short: Math.round(l.shortageLoss ?? 0),
    stage: l.worstStage,
    stops: +l.stopsPerYear.toFixed(1),
  }))
  .sort((a, b) => b.loss - a.loss);
console.table(rows);
console.log("total", r.stopLoss, "tau", r.agreement);
const parts = new Map(
  (await database().part.findMany({ select: { id: true, number: true } })).map((p) => [p.id, p.number]),
);
console.table(
  r.pools.map((p) => ({
    part: parts.get(p.poolId) ?? p.poolId,
    stage: p.stage,
    n: p.installed,
    rate: +p.removal.mean.toFixed(4),
    ev: p.removal.events,
    uy: Math.round(p.removal.unitYears),
    book: p.book,
    usable: +p.usable.toFixed(1),
    ns: +p.noSpare.mean.toFixed(3),
    p50: p.depletionP50,
    p80: p.depletionP80,
  })),
);
await database().$disconnect();
