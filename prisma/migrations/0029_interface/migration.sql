CREATE TYPE "DeliveryState" AS ENUM ('waiting', 'delivered', 'given_up');

ALTER TABLE "AuditEntry" ADD COLUMN     "keyId" UUID,
ADD COLUMN     "keyName" TEXT;

CREATE TABLE "AccessKey" (
    "id" UUID NOT NULL,
    "userId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "ending" TEXT NOT NULL,
    "deeds" TEXT[],
    "siteIds" JSONB,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" TIMESTAMPTZ(6) NOT NULL,
    "lastUsedAt" TIMESTAMPTZ(6),
    "revokedAt" TIMESTAMPTZ(6),
    "allowance" DOUBLE PRECISION NOT NULL,
    "countedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "AccessKey_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "KeptAnswer" (
    "accessKeyId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "requestHash" TEXT NOT NULL,
    "outcome" JSONB,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "KeptAnswer_pkey" PRIMARY KEY ("accessKeyId","name")
);

CREATE TABLE "Webhook" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "subjects" TEXT[],
    "siteId" UUID,
    "generation" INTEGER NOT NULL DEFAULT 1,
    "formerUntil" TIMESTAMPTZ(6),
    "createdBy" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "disabledAt" TIMESTAMPTZ(6),
    "disabledReason" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Webhook_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "WebhookDelivery" (
    "id" UUID NOT NULL,
    "webhookId" UUID NOT NULL,
    "sequence" BIGSERIAL NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "state" "DeliveryState" NOT NULL DEFAULT 'waiting',
    "tries" INTEGER NOT NULL DEFAULT 0,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "triedAt" TIMESTAMPTZ(6),
    "status" INTEGER,
    "answer" TEXT,

    CONSTRAINT "WebhookDelivery_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "AccessKey_tokenHash_key" ON "AccessKey"("tokenHash");

CREATE INDEX "AccessKey_userId_idx" ON "AccessKey"("userId");

CREATE INDEX "KeptAnswer_createdAt_idx" ON "KeptAnswer"("createdAt");

CREATE INDEX "WebhookDelivery_webhookId_state_sequence_idx" ON "WebhookDelivery"("webhookId", "state", "sequence");

ALTER TABLE "AccessKey" ADD CONSTRAINT "AccessKey_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "KeptAnswer" ADD CONSTRAINT "KeptAnswer_accessKeyId_fkey" FOREIGN KEY ("accessKeyId") REFERENCES "AccessKey"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "Webhook" ADD CONSTRAINT "Webhook_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "WebhookDelivery" ADD CONSTRAINT "WebhookDelivery_webhookId_fkey" FOREIGN KEY ("webhookId") REFERENCES "Webhook"("id") ON DELETE CASCADE ON UPDATE CASCADE;
