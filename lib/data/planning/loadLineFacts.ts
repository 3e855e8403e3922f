import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readControllerFacts } from "@/lib/data/controllerFacts";
import { readRulesInForce } from "@/lib/data/rules";
import { readScopeAxes, readScopeItems } from "@/lib/data/scopeAxes";
import { readScopeParts } from "@/lib/data/scopeParts";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ScopeAxis, ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";

/** A line whose facts are asked for. */
export interface FactsLine {
  readonly id: string;
  readonly code: string;
  readonly siteId: string;
}

/** What is known of many lines for their retrofits, by line id; one question of each kind, however many lines. */
export async function loadLineFacts(
  actor: Actor,
  lines: readonly FactsLine[],
  { asOf, evaluationId }: { readonly asOf: IsoDate; readonly evaluationId: string },
): Promise<Map<string, ScopeFacts>> {
  const [{ parts, successors }, rules, controllers] = await Promise.all([
    readScopeParts(actor, evaluationId),
    readRulesInForce(actor),
    readControllerFacts(actor, { asOf }),
  ]);
  const byId = new Map(parts.map((part) => [part.id, part]));
  const question = { lineId: null, asOf, partOf: (id: string | null) => byId.get(id ?? "") ?? null };
  const [axes, items] = await Promise.all([readScopeAxes(actor, question), readScopeItems(actor, question)]);
  const siteOf = new Map(lines.map(({ code, siteId }) => [code, siteId]));
  const byLine = grouped(axes, ({ lineCode }) => lineCode);
  const byRing = grouped(
    axes.filter(({ ring }) => ring !== null),
    (axis) => ringKey(axis, siteOf),
  );
  const itemsOf = grouped(items, ({ lineCode }) => lineCode);
  return new Map(
    lines.map(({ id, code }) => {
      const own = byLine.get(code) ?? [];
      const rings = new Set(own.filter(({ ring }) => ring !== null).map((axis) => ringKey(axis, siteOf)));
      const others = [...rings].flatMap((key) =>
        (byRing.get(key) ?? []).filter(({ lineCode }) => lineCode !== code),
      );
      return [
        id,
        {
          ...{ lineCode: code, asOf, axes: [...own, ...others], items: itemsOf.get(code) ?? [] },
          ...{ rules, parts, successors, controllers: controllers.get(id) ?? [] },
        },
      ];
    }),
  );
}

/** A ring's name is its own within its site only. */
const ringKey = ({ lineCode, ring }: ScopeAxis, siteOf: ReadonlyMap<string, string>) =>
  `${siteOf.get(lineCode) ?? ""} ${ring}`;

function grouped<T>(rows: readonly T[], keyOf: (row: T) => string): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const list = found.get(key);
    if (list) list.push(row);
    else found.set(key, [row]);
  }
  return found;
}
