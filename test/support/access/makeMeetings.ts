import { hashOf } from "@/lib/access/secret";
import { database } from "@/lib/data/client";

const day = (text: string) => new Date(`${text}T00:00:00Z`);

interface Where {
  readonly siteId: string;
  readonly partId: string;
  readonly eventId: string | undefined;
  readonly otherId: string | undefined;
}

/** What was met about and given out at the own site, and what other systems reach. */
export async function makeMeetings({ siteId, partId, eventId, otherId }: Where) {
  const db = database();
  const owner = await db.user.findFirstOrThrow({ where: { email: "admin@halvenor.example" } });
  const review = await db.review.create({
    data: {
      ...{ siteId, heldOn: day("2026-11-30"), openedBy: "of a test" },
      buys: { create: { partId, quantity: 1, reason: "of a test" } },
    },
    include: { buys: true },
  });
  const closed = await db.review.create({
    data: {
      ...{ siteId, heldOn: day("2026-11-23"), openedBy: "of a test", closedBy: "of a test" },
      ...{ closedAt: day("2026-11-23"), input: new Uint8Array([1]), assumptions: {}, engine: "1" },
      figures: { figures: { siteCode: "KAR", worse: [] }, buys: [], actions: [], notes: [] },
    },
  });
  const action = await db.reviewAction.create({
    data: {
      ...{ siteId, reviewId: review.id, text: "of a test", ownerId: owner.id },
      ...{ raisedOn: day("2026-11-30"), dueOn: day("2026-12-30") },
    },
  });
  const issue = await db.reportIssue.create({
    data: {
      ...{ kind: "monthly", siteId, period: "2026-11", asOf: day("2026-11-30"), dataVersion: 1, engine: "1" },
      ...{ assumptions: "usual", seed: 1, document: {}, issuedBy: "of a test" },
      files: { create: { form: "xlsx", hash: hashOf("1"), bytes: new TextEncoder().encode("1") } },
    },
  });
  const match = await db.eventMatch.create({
    data: {
      ...{ siteId, keptId: eventId ?? "", otherId: otherId ?? "", verdict: "different", reason: "of a test" },
      ...{ filled: {}, decidedOn: day("2026-11-30"), decidedBy: "of a test" },
    },
  });
  const verdict = await db.sightVerdict.create({
    data: {
      ...{ siteId, mark: "of a test", what: "of a test", answer: "kept", reason: "of a test", steps: [] },
      ...{ decidedOn: day("2026-11-30"), decidedBy: "of a test" },
    },
  });
  return {
    ...{
      closedReviewId: closed.id,
      reviewId: review.id,
      buyId: review.buys[0]?.id,
      actionId: action.id,
      ownerId: owner.id,
    },
    ...{
      issueId: issue.id,
      matchId: match.id,
      verdictId: verdict.id,
      ...(await makeReaches(siteId, owner.id)),
    },
  };
}

async function makeReaches(siteId: string, userId: string) {
  const db = database();
  const webhook = await db.webhook.create({
    data: {
      ...{ name: "Of a test", address: "https://mes.plant.example/in", subjects: ["stock.changed"], siteId },
      createdBy: "of a test",
      deliveries: { create: { subject: "stock.changed", body: "{}", state: "given_up" } },
    },
    include: { deliveries: true },
  });
  const key = await db.accessKey.create({
    data: {
      ...{
        userId,
        name: "Of a test",
        tokenHash: "0".repeat(64),
        ending: "0000",
        deeds: ["read"],
        allowance: 1,
      },
      expiresAt: new Date(Date.now() + 86_400_000),
    },
  });
  const invitation = await db.accountInvitation.create({
    data: {
      ...{ tokenHash: "0".repeat(64), email: "invited@halvenor.example", name: "Invited", grants: [] },
      ...{ invitedBy: "of a test", expiresAt: new Date(Date.now() + 86_400_000) },
    },
  });
  return {
    invitationId: invitation.id,
    webhookId: webhook.id,
    deliveryId: webhook.deliveries[0]?.id,
    keyId: key.id,
  };
}
