-- Counting the store by hand, pieces put on hold, care of stored pieces, and the whole way of a repair.

CREATE TYPE "CareKind" AS ENUM ('power_up', 'battery');

ALTER TABLE "RepairOrder" ADD COLUMN "cost" DECIMAL(14,2),
ADD COLUMN "costCurrency" TEXT,
ADD COLUMN "fault" TEXT,
ADD COLUMN "note" TEXT,
ADD COLUMN "repairer" TEXT,
ADD COLUMN "steps" JSONB,
ADD COLUMN "version" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN "warrantyUntilOn" DATE;
ALTER TABLE "RepairOrder" ADD CONSTRAINT "RepairOrder_cost_with_currency" CHECK (("cost" IS NULL) = ("costCurrency" IS NULL));
ALTER TABLE "RepairOrder" ADD CONSTRAINT "RepairOrder_cost_not_negative" CHECK ("cost" >= 0);

ALTER TABLE "StockLot" ADD COLUMN "originUnknown" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN "testedOn" DATE;
-- A piece nobody knows the origin of is no spare until it was tested.
ALTER TABLE "StockLot" ADD CONSTRAINT "StockLot_unknown_origin_is_tested"
  CHECK (NOT ("originUnknown" AND "state" = 'usable' AND "testedOn" IS NULL));

CREATE TABLE "StockCount" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "reference" TEXT NOT NULL,
    "bins" TEXT NOT NULL DEFAULT '',
    "blind" BOOLEAN NOT NULL DEFAULT true,
    "limitEuro" DECIMAL(14,2) NOT NULL,
    "openedOn" DATE NOT NULL,
    "openedBy" TEXT NOT NULL,
    "approvedOn" DATE,
    "approvedBy" TEXT,
    "postedOn" DATE,
    "postedBy" TEXT,
    "steps" JSONB,
    CONSTRAINT "StockCount_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "StockCount_limit_not_negative" CHECK ("limitEuro" >= 0),
    CONSTRAINT "StockCount_approved_by_somebody" CHECK (("approvedOn" IS NULL) = ("approvedBy" IS NULL)),
    CONSTRAINT "StockCount_posted_by_somebody" CHECK (num_nonnulls("postedOn", "postedBy", "steps") IN (0, 3))
);
CREATE UNIQUE INDEX "StockCount_siteId_reference_key" ON "StockCount"("siteId", "reference");

CREATE TABLE "CountLine" (
    "id" UUID NOT NULL,
    "countId" UUID NOT NULL,
    "lotId" UUID,
    "partId" UUID,
    "plate" TEXT NOT NULL DEFAULT '',
    "bin" TEXT NOT NULL,
    "revision" TEXT NOT NULL DEFAULT '',
    "bookState" "StockState",
    "bookQuantity" INTEGER,
    "bookPoweredOn" DATE,
    "found" INTEGER,
    "state" "StockState",
    "lastPoweredOn" DATE,
    "tested" BOOLEAN,
    "originUnknown" BOOLEAN NOT NULL DEFAULT false,
    "holdReason" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "countedBy" TEXT NOT NULL DEFAULT '',
    "countedById" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "CountLine_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "CountLine_found_not_negative" CHECK ("found" >= 0),
    CONSTRAINT "CountLine_found_has_state" CHECK ("found" IS NULL OR "state" IS NOT NULL),
    CONSTRAINT "CountLine_version_from_one" CHECK ("version" >= 1)
);
CREATE INDEX "CountLine_lotId_idx" ON "CountLine"("lotId");
CREATE INDEX "CountLine_partId_idx" ON "CountLine"("partId");
CREATE UNIQUE INDEX "CountLine_countId_lotId_key" ON "CountLine"("countId", "lotId");

CREATE TABLE "StockHold" (
    "id" UUID NOT NULL,
    "lotId" UUID NOT NULL,
    "pieces" INTEGER NOT NULL,
    "reason" TEXT NOT NULL,
    "heldOn" DATE NOT NULL,
    "heldBy" TEXT NOT NULL,
    "releasedOn" DATE,
    "releasedBy" TEXT,
    "releasedAs" "StockState",
    "releaseNote" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "StockHold_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "StockHold_pieces_positive" CHECK ("pieces" > 0),
    CONSTRAINT "StockHold_released_by_somebody" CHECK (num_nonnulls("releasedOn", "releasedBy", "releasedAs") IN (0, 3))
);
CREATE INDEX "StockHold_lotId_idx" ON "StockHold"("lotId");

CREATE TABLE "CareInterval" (
    "itemClass" "ItemClass" NOT NULL,
    "kind" "CareKind" NOT NULL,
    "everyMonths" INTEGER,
    "changedOn" DATE NOT NULL,
    "changedBy" TEXT NOT NULL,
    CONSTRAINT "CareInterval_pkey" PRIMARY KEY ("itemClass"),
    CONSTRAINT "CareInterval_months_positive" CHECK ("everyMonths" > 0)
);

CREATE TABLE "StorageCare" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "lotId" UUID,
    "kind" "CareKind" NOT NULL,
    "doneOn" DATE NOT NULL,
    "doneBy" TEXT NOT NULL,
    "pieces" INTEGER NOT NULL,
    "failed" INTEGER NOT NULL DEFAULT 0,
    "note" TEXT NOT NULL DEFAULT '',
    "steps" JSONB NOT NULL,
    CONSTRAINT "StorageCare_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "StorageCare_failed_of_pieces" CHECK ("failed" BETWEEN 0 AND "pieces")
);
CREATE INDEX "StorageCare_lotId_idx" ON "StorageCare"("lotId");
CREATE INDEX "StorageCare_siteId_idx" ON "StorageCare"("siteId");
CREATE INDEX "StorageCare_partId_idx" ON "StorageCare"("partId");

ALTER TABLE "StockCount" ADD CONSTRAINT "StockCount_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "CountLine" ADD CONSTRAINT "CountLine_countId_fkey" FOREIGN KEY ("countId") REFERENCES "StockCount"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "CountLine" ADD CONSTRAINT "CountLine_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "StockLot"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "CountLine" ADD CONSTRAINT "CountLine_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "StockHold" ADD CONSTRAINT "StockHold_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "StockLot"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "StorageCare" ADD CONSTRAINT "StorageCare_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "StorageCare" ADD CONSTRAINT "StorageCare_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "StorageCare" ADD CONSTRAINT "StorageCare_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "StockLot"("id") ON DELETE SET NULL ON UPDATE CASCADE;
