CREATE TYPE "ReviewActionState" AS ENUM ('open', 'done', 'dropped');
CREATE TABLE "Review" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "heldOn" DATE NOT NULL,
    "openedBy" TEXT NOT NULL,
    "closedAt" TIMESTAMPTZ(6),
    "closedBy" TEXT,
    "figures" JSONB,
    "input" BYTEA,
    "assumptions" JSONB,
    "engine" TEXT,

    CONSTRAINT "Review_pkey" PRIMARY KEY ("id")
);
CREATE TABLE "ReviewNote" (
    "reviewId" UUID NOT NULL,
    "topic" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "ReviewNote_pkey" PRIMARY KEY ("reviewId","topic")
);
CREATE TABLE "ReviewBuy" (
    "id" UUID NOT NULL,
    "reviewId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "reason" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "ReviewBuy_pkey" PRIMARY KEY ("id")
);
CREATE TABLE "ReviewAction" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "reviewId" UUID,
    "text" TEXT NOT NULL,
    "partId" UUID,
    "lineId" UUID,
    "ownerId" TEXT NOT NULL,
    "raisedOn" DATE NOT NULL,
    "dueOn" DATE NOT NULL,
    "state" "ReviewActionState" NOT NULL DEFAULT 'open',
    "settledOn" DATE,
    "reason" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "ReviewAction_pkey" PRIMARY KEY ("id")
);
CREATE TABLE "Digest" (
    "userId" TEXT NOT NULL,
    "siteId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Digest_pkey" PRIMARY KEY ("userId")
);
CREATE TABLE "DigestMail" (
    "id" UUID NOT NULL,
    "userId" TEXT NOT NULL,
    "weekOf" DATE,
    "askedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "problem" TEXT,
    "sentAt" TIMESTAMPTZ(6),
    "file" TEXT,

    CONSTRAINT "DigestMail_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "Review_siteId_heldOn_idx" ON "Review"("siteId", "heldOn");
CREATE UNIQUE INDEX "ReviewBuy_reviewId_partId_key" ON "ReviewBuy"("reviewId", "partId");
CREATE INDEX "ReviewAction_siteId_state_idx" ON "ReviewAction"("siteId", "state");
CREATE INDEX "ReviewAction_ownerId_state_idx" ON "ReviewAction"("ownerId", "state");
CREATE INDEX "DigestMail_userId_askedAt_idx" ON "DigestMail"("userId", "askedAt");
CREATE UNIQUE INDEX "DigestMail_userId_weekOf_key" ON "DigestMail"("userId", "weekOf");
ALTER TABLE "Review" ADD CONSTRAINT "Review_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ReviewNote" ADD CONSTRAINT "ReviewNote_reviewId_fkey" FOREIGN KEY ("reviewId") REFERENCES "Review"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ReviewBuy" ADD CONSTRAINT "ReviewBuy_reviewId_fkey" FOREIGN KEY ("reviewId") REFERENCES "Review"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ReviewBuy" ADD CONSTRAINT "ReviewBuy_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_reviewId_fkey" FOREIGN KEY ("reviewId") REFERENCES "Review"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "User"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Digest" ADD CONSTRAINT "Digest_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "Digest" ADD CONSTRAINT "Digest_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "DigestMail" ADD CONSTRAINT "DigestMail_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- One review of a site is open at most, and a closed one keeps all that was shown.
CREATE UNIQUE INDEX "Review_one_open" ON "Review"("siteId") WHERE "closedAt" IS NULL;
ALTER TABLE "Review" ADD CONSTRAINT "Review_closed_whole" CHECK (num_nulls("closedAt", "closedBy", "figures", "input", "assumptions", "engine") IN (0, 6));
ALTER TABLE "ReviewBuy" ADD CONSTRAINT "ReviewBuy_some_pieces" CHECK ("quantity" >= 1);
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_settled_on_a_day" CHECK (("state" = 'open') = ("settledOn" IS NULL));
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_dropped_for_a_reason" CHECK (("state" = 'dropped') = ("reason" IS NOT NULL));
