-- What network lists saw, what people decided of it, what is retired, how gaps in the records moved, and what mending takes.

ALTER TABLE "Machine" ADD COLUMN "retiredOn" DATE, ADD COLUMN "retiredReason" TEXT NOT NULL DEFAULT '';
ALTER TABLE "Position" ADD COLUMN "retiredOn" DATE, ADD COLUMN "retiredReason" TEXT NOT NULL DEFAULT '';

CREATE TABLE "Sighting" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "source" TEXT NOT NULL,
    "seenOn" DATE NOT NULL,
    "line" TEXT NOT NULL DEFAULT '',
    "machine" TEXT NOT NULL DEFAULT '',
    "network" TEXT NOT NULL DEFAULT '',
    "controller" TEXT NOT NULL DEFAULT '',
    "slot" TEXT NOT NULL DEFAULT '',
    "address" TEXT NOT NULL,
    "name" TEXT NOT NULL DEFAULT '',
    "maker" TEXT NOT NULL DEFAULT '',
    "number" TEXT NOT NULL DEFAULT '',
    "revision" TEXT NOT NULL DEFAULT '',
    "firmware" TEXT NOT NULL DEFAULT '',
    "serial" TEXT NOT NULL DEFAULT '',
    "status" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Sighting_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "Sighting_siteId_seenOn_idx" ON "Sighting"("siteId", "seenOn");
ALTER TABLE "Sighting" ADD CONSTRAINT "Sighting_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TYPE "SightAnswer" AS ENUM ('taken', 'kept', 'retired');

CREATE TABLE "SightVerdict" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "mark" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "answer" "SightAnswer" NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "decidedOn" DATE NOT NULL,
    "decidedBy" TEXT NOT NULL,
    "steps" JSONB NOT NULL,
    CONSTRAINT "SightVerdict_pkey" PRIMARY KEY ("id"),
    -- Whoever does not believe the list, or takes something out of service, says why.
    CONSTRAINT "SightVerdict_reason" CHECK ("answer" = 'taken' OR "reason" <> '')
);
CREATE UNIQUE INDEX "SightVerdict_siteId_mark_key" ON "SightVerdict"("siteId", "mark");
ALTER TABLE "SightVerdict" ADD CONSTRAINT "SightVerdict_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "GapCount" (
    "siteId" UUID NOT NULL,
    "gap" TEXT NOT NULL,
    "asOf" DATE NOT NULL,
    "missing" INTEGER NOT NULL,
    "of" INTEGER NOT NULL,
    CONSTRAINT "GapCount_pkey" PRIMARY KEY ("siteId", "gap", "asOf"),
    CONSTRAINT "GapCount_share" CHECK ("missing" BETWEEN 0 AND "of")
);
ALTER TABLE "GapCount" ADD CONSTRAINT "GapCount_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "EffortNorm" (
    "gap" TEXT NOT NULL,
    "hours" DECIMAL(6,2) NOT NULL,
    "changedOn" DATE NOT NULL,
    "changedBy" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "EffortNorm_pkey" PRIMARY KEY ("gap"),
    CONSTRAINT "EffortNorm_hours" CHECK ("hours" > 0)
);
