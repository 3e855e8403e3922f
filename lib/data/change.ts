import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { claimRequest, keepAnswer } from "@/lib/data/interface/keptAnswer";
import { queueDeliveries } from "@/lib/data/interface/queueDeliveries";
import { ok, type Result } from "@/lib/kernel/result";
import { plainly } from "@/lib/words/reading";
import type { Prisma, PrismaClient } from "@/prisma/generated/client";

/** What the audit keeps of one changed row. */
export interface Deeded {
  readonly deed: string;
  readonly entity: string;
  readonly entityId: string;
  readonly siteId?: string | null;
  readonly before?: Prisma.InputJsonValue;
  readonly after?: Prisma.InputJsonValue;
  /** The reason the person gave; left out when they gave none. */
  readonly why?: string | null;
  /** The parts whose stock alone it touched; without them it may have touched any figure. Not audited. */
  readonly stockOf?: readonly string[];
  /** It touched nothing an evaluation reads, though its entity has such fields too. Not audited. */
  readonly beside?: boolean;
}

export type Transaction = Prisma.TransactionClient;

/** What no evaluation reads; a change of these alone leaves every stored figure right. */
const BESIDE_THE_FIGURES: ReadonlySet<string> = new Set([
  "User",
  "AccountInvitation",
  "CalendarFeed",
  // How other systems reach in and are told.
  "AccessKey",
  "Webhook",
  // What a meeting saw, said and decided, and the mail that tells it.
  "Review",
  "ReviewAction",
  "ReviewBuy",
  "Digest",
  // A report that was given out, and who gets it by mail.
  "ReportIssue",
  "ReportWish",
  "Plan",
  "PlanLine",
  "SolveRun",
  "CostEntry",
  "CostImport",
  "BudgetItem",
  "ChangeOrder",
  "ClassForecast",
  // Turns money of projects; the figures keep the budget rates.
  "MonthRate",
  "Milestone",
  "AxisRecord",
  "AxisEntry",
  // How a project is planned and how far its axes are.
  "AxisStep",
  "ProjectAxis",
  "ProjectTask",
  "Replan",
  "ProjectGate",
  // Said of the work of a project; shelf and installed base move when it is closed.
  "Cutover",
  "CutoverStep",
  "OpenPoint",
  "ProjectRisk",
  "RemovedUnit",
  "FittedUnit",
  "CloseStatement",
  // Binds whatever the loss is; nothing weighs it against money.
  "Obligation",
  // The shelf moves when pieces are sent and received; those are changes of the lots.
  "Transfer",
  // Help at a breakdown; nothing is computed from them.
  "Backup",
  "Contact",
  // Says where a place is, not what is in it.
  "Panel",
  // Says what fits, not what is lost.
  "CompatibilityRule",
  // Says what a retrofit costs.
  "ScopeNorm",
  // Says what money, hands and shutdowns plans are made with, and who answers for leaving a line as it is.
  "PlanFigure",
  "ShutdownWindow",
  "ApprovalFreeze",
  "PlanPrecedence",
  "RiskAcceptance",
  // Says what was decided; the pieces count once they are booked in.
  "BuyDecision",
  // That two records are two events changes nothing; that they are one is a change of the event.
  // A version that was written is not yet in use; taking it into use is a change of the setting.
  "AssumptionSet",
  // How files are read; what they say counts once they are loaded.
  "ImportSource",
  "SourceReading",
  "LearnedWord",
  "NumberVerdict",
  "PartAlias",
  // The shelf moves when a count is posted, a hold set or care given; those are changes of the lots.
  "StockCount",
  "CountLine",
  "StockHold",
  "StorageCare",
  "CareInterval",
  // What a network list saw and what was said of it; a record it changes is a change of its own.
  "Sighting",
  "SightVerdict",
  // How long mending takes.
  "EffortNorm",
]);

const LONGEST_CHANGE_MS = 120_000;

/** A change that writes much needs a connection of its own and more time. */
interface Room {
  readonly client: PrismaClient;
  readonly longestMs: number;
}

/**
 * Runs a change in one transaction with its audit entries and a new data version.
 *
 * A refusal undoes what was written before it. Nothing recorded means nothing was changed: the version
 * stays, so what was computed still holds. The same request of another system again changes nothing and gets what it
 * came to; the addresses that want to hear of the change are told by messages written here.
 */
export async function change<T, E>(
  actor: Actor,
  run: (tx: Transaction, record: (deed: Deeded) => void) => Promise<Result<T, E>>,
  room: Room = { client: database(), longestMs: LONGEST_CHANGE_MS },
): Promise<Result<T, E>> {
  try {
    // What is stored is read by others: it is written in no one's language, whoever asked for it.
    return await plainly(() =>
      room.client.$transaction(
        async (tx) => {
          const before = await claimRequest(tx, actor);
          if (before) return ok(before.value as T);
          const deeds: Deeded[] = [];
          const result = await run(tx, (deed) => deeds.push(deed));
          if (!result.ok) throw new Refused(result);
          if (deeds.length > 0) await keep(tx, actor, deeds);
          await keepAnswer(tx, actor, result.value);
          return result;
        },
        { timeout: room.longestMs, maxWait: Math.max(room.longestMs / 12, 10_000) },
      ),
    );
  } catch (error) {
    if (error instanceof Refused) return error.result as Result<T, E>;
    throw error;
  }
}

/** Carries a refusal out of the transaction, so that the database rolls back. */
class Refused extends Error {
  constructor(readonly result: unknown) {
    super("refused");
  }
}

async function keep(tx: Transaction, actor: Actor, deeds: readonly Deeded[]): Promise<void> {
  const by = { userId: actor.userId, keyId: actor.key?.id ?? null, keyName: actor.key?.name ?? null };
  await tx.auditEntry.createMany({
    data: deeds.map(({ stockOf: _, beside: __, ...deed }) => ({ ...deed, ...by })),
  });
  await queueDeliveries(tx, deeds);
  const telling = deeds.filter(({ entity, beside }) => !beside && !BESIDE_THE_FIGURES.has(entity));
  if (telling.length === 0) return;
  const { version } = await tx.dataVersion.update({
    where: { id: 1 },
    data: { version: { increment: 1 } },
    select: { version: true },
  });
  if (telling.every(({ stockOf }) => stockOf !== undefined))
    await tx.narrowChange.create({
      data: { version, partIds: [...new Set(telling.flatMap(({ stockOf }) => stockOf ?? []))] },
    });
}

/**
 * Keeps the data still until the transaction ends: no other change commits and no other evaluation starts.
 *
 * Each change raises the version before it commits, so holding the row is enough.
 */
export async function holdData(tx: Transaction): Promise<void> {
  await tx.$queryRaw`SELECT "version" FROM "DataVersion" FOR UPDATE`;
}
