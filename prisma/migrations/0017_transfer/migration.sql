-- Pieces on their way from one site's shelf to another's, and who moved them on.

CREATE TYPE "TransferState" AS ENUM ('proposed', 'agreed', 'refused', 'sent', 'received', 'withdrawn');

CREATE TABLE "Transfer" (
    "id" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "fromSiteId" UUID NOT NULL,
    "toSiteId" UUID NOT NULL,
    "lotId" UUID,
    "bin" TEXT NOT NULL,
    "revision" TEXT NOT NULL,
    "lastPoweredOn" DATE,
    "testedOn" DATE,
    "originUnknown" BOOLEAN NOT NULL DEFAULT false,
    "pieces" INTEGER NOT NULL,
    "state" "TransferState" NOT NULL DEFAULT 'proposed',
    "refusal" TEXT NOT NULL DEFAULT '',
    "toLotId" UUID,
    CONSTRAINT "Transfer_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "Transfer_pieces" CHECK ("pieces" > 0),
    CONSTRAINT "Transfer_two_sites" CHECK ("fromSiteId" <> "toSiteId"),
    -- A donor who keeps pieces says why, and only then.
    CONSTRAINT "Transfer_refusal" CHECK (("state" = 'refused') = ("refusal" <> '')),
    CONSTRAINT "Transfer_received" CHECK ("toLotId" IS NULL OR "state" = 'received')
);
CREATE INDEX "Transfer_partId_idx" ON "Transfer"("partId");
CREATE INDEX "Transfer_fromSiteId_idx" ON "Transfer"("fromSiteId");
CREATE INDEX "Transfer_toSiteId_idx" ON "Transfer"("toSiteId");
CREATE INDEX "Transfer_lotId_idx" ON "Transfer"("lotId");
CREATE INDEX "Transfer_toLotId_idx" ON "Transfer"("toLotId");
ALTER TABLE "Transfer" ADD CONSTRAINT "Transfer_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Transfer" ADD CONSTRAINT "Transfer_fromSiteId_fkey" FOREIGN KEY ("fromSiteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Transfer" ADD CONSTRAINT "Transfer_toSiteId_fkey" FOREIGN KEY ("toSiteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Transfer" ADD CONSTRAINT "Transfer_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "StockLot"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "Transfer" ADD CONSTRAINT "Transfer_toLotId_fkey" FOREIGN KEY ("toLotId") REFERENCES "StockLot"("id") ON DELETE SET NULL ON UPDATE CASCADE;

CREATE TABLE "TransferStep" (
    "id" UUID NOT NULL,
    "transferId" UUID NOT NULL,
    "state" "TransferState" NOT NULL,
    "back" BOOLEAN NOT NULL DEFAULT false,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "by" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "TransferStep_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "TransferStep_transferId_idx" ON "TransferStep"("transferId");
ALTER TABLE "TransferStep" ADD CONSTRAINT "TransferStep_transferId_fkey" FOREIGN KEY ("transferId") REFERENCES "Transfer"("id") ON DELETE CASCADE ON UPDATE CASCADE;
