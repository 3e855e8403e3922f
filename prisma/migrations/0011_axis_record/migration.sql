CREATE TABLE "AxisRecord" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "axisId" UUID NOT NULL,
    "acceptedOn" DATE,
    "acceptedBy" TEXT,
    CONSTRAINT "AxisRecord_pkey" PRIMARY KEY ("id")
);
CREATE TABLE "AxisEntry" (
    "id" UUID NOT NULL,
    "recordId" UUID NOT NULL,
    "checkId" TEXT NOT NULL,
    "asFound" DOUBLE PRECISION,
    "limit" DOUBLE PRECISION,
    "asLeft" DOUBLE PRECISION[],
    "confirmed" BOOLEAN,
    "notApplicable" TEXT NOT NULL DEFAULT '',
    "instrument" TEXT NOT NULL DEFAULT '',
    "by" TEXT NOT NULL DEFAULT '',
    "witness" TEXT NOT NULL DEFAULT '',
    "on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "AxisEntry_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "AxisRecord_axisId_idx" ON "AxisRecord"("axisId");
CREATE UNIQUE INDEX "AxisRecord_projectId_axisId_key" ON "AxisRecord"("projectId", "axisId");
CREATE UNIQUE INDEX "AxisEntry_recordId_checkId_key" ON "AxisEntry"("recordId", "checkId");
ALTER TABLE "AxisRecord" ADD CONSTRAINT "AxisRecord_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "AxisRecord" ADD CONSTRAINT "AxisRecord_axisId_fkey" FOREIGN KEY ("axisId") REFERENCES "Axis"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "AxisEntry" ADD CONSTRAINT "AxisEntry_recordId_fkey" FOREIGN KEY ("recordId") REFERENCES "AxisRecord"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "AxisRecord" ADD CONSTRAINT "AxisRecord_accepted_by_somebody" CHECK (("acceptedOn" IS NULL) = ("acceptedBy" IS NULL));
ALTER TABLE "AxisEntry" ADD CONSTRAINT "AxisEntry_version_from_one" CHECK ("version" >= 1);
