-- Cutover by the hour, what is open and at risk, what came out and went in, and the closing of a project.

CREATE TYPE "ProjectRiskState" AS ENUM ('open', 'happened', 'over');
CREATE TYPE "ReleaseResult" AS ENUM ('usable', 'unproven', 'needs_repair', 'scrapped');
CREATE TYPE "CloseStatementKind" AS ENUM ('register', 'drawings', 'levels', 'commitments', 'no_axes', 'none_removed');

CREATE TABLE "Cutover" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "startsAt" TIMESTAMPTZ(6) NOT NULL,
    "productionAt" TIMESTAMPTZ(6) NOT NULL,
    "restoreHours" DECIMAL(6,2),
    "marginHours" DECIMAL(6,2),
    "restoreTestedOn" DATE,
    "restoreTestedBy" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Cutover_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "Cutover_in_order" CHECK ("productionAt" > "startsAt"),
    CONSTRAINT "Cutover_hours" CHECK ("restoreHours" > 0 AND "marginHours" >= 0),
    CONSTRAINT "Cutover_tested" CHECK ("restoreTestedOn" IS NULL OR ("restoreTestedBy" <> '' AND "restoreHours" IS NOT NULL))
);
CREATE UNIQUE INDEX "Cutover_projectId_name_key" ON "Cutover"("projectId", "name");
ALTER TABLE "Cutover" ADD CONSTRAINT "Cutover_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "CutoverStep" (
    "id" UUID NOT NULL,
    "cutoverId" UUID NOT NULL,
    "title" TEXT NOT NULL,
    "afterHours" DECIMAL(7,2) NOT NULL,
    "hours" DECIMAL(6,2) NOT NULL,
    "who" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "needs" TEXT NOT NULL DEFAULT '',
    "caution" TEXT NOT NULL DEFAULT '',
    "startedAt" TIMESTAMPTZ(6),
    "endedAt" TIMESTAMPTZ(6),
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "CutoverStep_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "CutoverStep_hours" CHECK ("afterHours" >= 0 AND "hours" > 0),
    CONSTRAINT "CutoverStep_in_order" CHECK ("endedAt" IS NULL OR ("startedAt" IS NOT NULL AND "endedAt" >= "startedAt"))
);
CREATE INDEX "CutoverStep_cutoverId_idx" ON "CutoverStep"("cutoverId");
ALTER TABLE "CutoverStep" ADD CONSTRAINT "CutoverStep_cutoverId_fkey" FOREIGN KEY ("cutoverId") REFERENCES "Cutover"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "OpenPoint" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "raisedOn" DATE NOT NULL,
    "dueOn" DATE,
    "blocks" BOOLEAN NOT NULL DEFAULT false,
    "doneOn" DATE,
    "doneBy" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "OpenPoint_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "OpenPoint_done" CHECK (("doneOn" IS NULL) = ("doneBy" IS NULL))
);
CREATE INDEX "OpenPoint_projectId_idx" ON "OpenPoint"("projectId");
ALTER TABLE "OpenPoint" ADD CONSTRAINT "OpenPoint_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "ProjectRisk" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "chanceLow" DOUBLE PRECISION,
    "chanceHigh" DOUBLE PRECISION,
    "effectLow" DECIMAL(16,2),
    "effectHigh" DECIMAL(16,2),
    "action" TEXT NOT NULL DEFAULT '',
    "owner" TEXT NOT NULL DEFAULT '',
    "state" "ProjectRiskState" NOT NULL DEFAULT 'open',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ProjectRisk_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "ProjectRisk_chance" CHECK (("chanceLow" IS NULL) = ("chanceHigh" IS NULL) AND "chanceLow" >= 0 AND "chanceLow" <= "chanceHigh" AND "chanceHigh" <= 1),
    CONSTRAINT "ProjectRisk_effect" CHECK (("effectLow" IS NULL) = ("effectHigh" IS NULL) AND "effectLow" >= 0 AND "effectLow" <= "effectHigh")
);
CREATE INDEX "ProjectRisk_projectId_idx" ON "ProjectRisk"("projectId");
ALTER TABLE "ProjectRisk" ADD CONSTRAINT "ProjectRisk_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "RemovedUnit" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "positionId" UUID,
    "partId" UUID NOT NULL,
    "serial" TEXT NOT NULL DEFAULT '',
    "revision" TEXT NOT NULL DEFAULT '',
    "removedOn" DATE NOT NULL,
    "result" "ReleaseResult",
    "testedBy" TEXT NOT NULL DEFAULT '',
    "how" TEXT NOT NULL DEFAULT '',
    "testedOn" DATE,
    "bin" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "RemovedUnit_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "RemovedUnit_tested" CHECK (CASE WHEN "result" IS NULL THEN "testedOn" IS NULL AND "testedBy" = '' ELSE "testedOn" IS NOT NULL AND "testedBy" <> '' END),
    CONSTRAINT "RemovedUnit_in_order" CHECK ("testedOn" >= "removedOn"),
    CONSTRAINT "RemovedUnit_bin" CHECK ("result" IS DISTINCT FROM 'scrapped' OR "bin" = '')
);
CREATE INDEX "RemovedUnit_projectId_idx" ON "RemovedUnit"("projectId");
CREATE INDEX "RemovedUnit_partId_idx" ON "RemovedUnit"("partId");
CREATE INDEX "RemovedUnit_positionId_idx" ON "RemovedUnit"("positionId");
ALTER TABLE "RemovedUnit" ADD CONSTRAINT "RemovedUnit_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "RemovedUnit" ADD CONSTRAINT "RemovedUnit_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "RemovedUnit" ADD CONSTRAINT "RemovedUnit_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
-- A unit comes out of a project once.
CREATE UNIQUE INDEX "RemovedUnit_one" ON "RemovedUnit"("projectId", "partId", "serial") WHERE "serial" <> '';

CREATE TABLE "FittedUnit" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "positionId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "serial" TEXT NOT NULL,
    "revision" TEXT NOT NULL DEFAULT '',
    "firmware" TEXT NOT NULL,
    "added" BOOLEAN NOT NULL DEFAULT false,
    "fittedOn" DATE NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "FittedUnit_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "FittedUnit_read" CHECK ("serial" <> '')
);
CREATE INDEX "FittedUnit_positionId_idx" ON "FittedUnit"("positionId");
CREATE INDEX "FittedUnit_partId_idx" ON "FittedUnit"("partId");
CREATE UNIQUE INDEX "FittedUnit_projectId_positionId_key" ON "FittedUnit"("projectId", "positionId");
ALTER TABLE "FittedUnit" ADD CONSTRAINT "FittedUnit_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "FittedUnit" ADD CONSTRAINT "FittedUnit_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "FittedUnit" ADD CONSTRAINT "FittedUnit_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "CloseStatement" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "kind" "CloseStatementKind" NOT NULL,
    "statedBy" TEXT NOT NULL,
    "statedOn" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "CloseStatement_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "CloseStatement_projectId_kind_key" ON "CloseStatement"("projectId", "kind");
ALTER TABLE "CloseStatement" ADD CONSTRAINT "CloseStatement_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "ProjectClosing" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "closedOn" DATE NOT NULL,
    "closedBy" TEXT NOT NULL,
    "steps" JSONB NOT NULL,
    "checkOn" DATE NOT NULL,
    "checkedOn" DATE,
    "checkedBy" TEXT,
    "conclusion" TEXT,
    "checked" JSONB,
    CONSTRAINT "ProjectClosing_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "ProjectClosing_checked" CHECK (("checkedOn" IS NULL) = ("checkedBy" IS NULL) AND ("checkedOn" IS NULL) = ("conclusion" IS NULL) AND ("checkedOn" IS NULL) = ("checked" IS NULL))
);
CREATE UNIQUE INDEX "ProjectClosing_projectId_key" ON "ProjectClosing"("projectId");
ALTER TABLE "ProjectClosing" ADD CONSTRAINT "ProjectClosing_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
