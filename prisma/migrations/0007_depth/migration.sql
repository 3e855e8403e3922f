CREATE TYPE "ObligationKind" AS ENUM ('safety', 'legal');
ALTER TABLE "Evaluation" ADD COLUMN "totals" JSONB;
ALTER TABLE "Line" ADD COLUMN "costFixed" DECIMAL(14,2),
ADD COLUMN "costMethod" TEXT,
ADD COLUMN "costSteps" JSONB NOT NULL DEFAULT '[]';
ALTER TABLE "Machine" ADD COLUMN "standbyGroup" TEXT,
ADD COLUMN "standbyNeeded" INTEGER;
CREATE TABLE "Obligation" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "lineId" UUID,
    "kind" "ObligationKind" NOT NULL,
    "title" TEXT NOT NULL,
    "dueOn" DATE NOT NULL,
    "source" TEXT NOT NULL,
    "owner" TEXT,
    "evidence" "Evidence" NOT NULL DEFAULT 'documented',
    "recordedOn" DATE NOT NULL,
    "doneOn" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Obligation_pkey" PRIMARY KEY ("id")
);
CREATE TABLE "PlannedRemoval" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "units" INTEGER NOT NULL,
    "leavesOn" DATE NOT NULL,
    "kept" BOOLEAN NOT NULL DEFAULT true,
    CONSTRAINT "PlannedRemoval_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "Obligation_siteId_idx" ON "Obligation"("siteId");
CREATE INDEX "Obligation_lineId_idx" ON "Obligation"("lineId");
CREATE INDEX "PlannedRemoval_lineId_idx" ON "PlannedRemoval"("lineId");
CREATE INDEX "PlannedRemoval_partId_idx" ON "PlannedRemoval"("partId");
CREATE UNIQUE INDEX "PlannedRemoval_projectId_partId_key" ON "PlannedRemoval"("projectId", "partId");
ALTER TABLE "Obligation" ADD CONSTRAINT "Obligation_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Obligation" ADD CONSTRAINT "Obligation_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "PlannedRemoval" ADD CONSTRAINT "PlannedRemoval_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "PlannedRemoval" ADD CONSTRAINT "PlannedRemoval_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "PlannedRemoval" ADD CONSTRAINT "PlannedRemoval_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "Line" ADD CONSTRAINT "Line_fixed_cost_not_negative" CHECK ("costFixed" >= 0);
ALTER TABLE "Line" ADD CONSTRAINT "Line_cost_steps_list" CHECK (jsonb_typeof("costSteps") = 'array');
ALTER TABLE "Machine" ADD CONSTRAINT "Machine_standby_group_and_need" CHECK (("standbyGroup" IS NULL) = ("standbyNeeded" IS NULL));
ALTER TABLE "Machine" ADD CONSTRAINT "Machine_standby_needs_one" CHECK ("standbyNeeded" >= 1);
ALTER TABLE "PlannedRemoval" ADD CONSTRAINT "PlannedRemoval_units_positive" CHECK ("units" > 0);
