import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import type { Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PlanDecision } from "@/lib/portfolio/planProblem";
import type { PlanChoice } from "@/lib/portfolio/planResult";
import type { Prisma } from "@/prisma/generated/client";

const include = {
  former: { select: { id: true, name: true, issue: true } },
  lines: {
    orderBy: { line: { code: "asc" } },
    include: {
      line: { select: { code: true, name: true, siteId: true } },
      slots: true,
      project: { select: { code: true } },
    },
  },
} satisfies Prisma.PlanInclude;

export type StoredBoard = Prisma.PlanGetPayload<{ include: typeof include }>;

/** A board whose every line is where the person may do the deed; null when there is none. */
export function findBoard(
  tx: Transaction,
  { actor, deed, planId }: { readonly actor: Actor; readonly deed: Deed; readonly planId: string },
): Promise<StoredBoard | null> {
  const line = atSites(actor, deed);
  return tx.plan.findFirst({
    where: { id: planId, kind: "board", lines: { some: { line }, every: { line } } },
    include,
  });
}

/** What is placed, in the order of lines. */
export function choicesOf(_actor: Actor, { lines }: StoredBoard): PlanChoice[] {
  return lines.flatMap(({ lineId, slots }) =>
    slots.map(({ option, slot }) => ({ lineId, optionId: option, slotId: slot })),
  );
}

/** Lines pinned in hold what is placed of them, else any of their ways; lines pinned out are banned. */
export function decisionsOf(
  actor: Actor,
  board: StoredBoard,
): { readonly pins: readonly PlanDecision[]; readonly bans: readonly PlanDecision[] } {
  const any = ({ lineId }: { readonly lineId: string }) => ({ lineId, optionId: null, slotId: null });
  const placed = choicesOf(actor, board);
  return {
    pins: board.lines
      .filter(({ pin }) => pin === "in")
      .flatMap((line): PlanDecision[] => {
        const own = placed.filter(({ lineId }) => lineId === line.lineId);
        return own.length === 0 ? [any(line)] : own;
      }),
    bans: board.lines.filter(({ pin }) => pin === "out").map(any),
  };
}

export const asOfOf = (_actor: Actor, { asOf }: Pick<StoredBoard, "asOf">): IsoDate =>
  asOf.toISOString().slice(0, 10);
