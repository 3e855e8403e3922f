CREATE TYPE "SolveState" AS ENUM ('running', 'solved', 'infeasible', 'none_found', 'cancelled', 'interrupted', 'failed');
CREATE TABLE "SolveRun" (
    "id" UUID NOT NULL,
    "planId" UUID NOT NULL,
    "state" "SolveState" NOT NULL DEFAULT 'running',
    "planVersion" INTEGER NOT NULL,
    "asOf" DATE NOT NULL,
    "engine" TEXT NOT NULL,
    "dataVersion" BIGINT NOT NULL,
    "inputHash" TEXT NOT NULL,
    "solver" TEXT NOT NULL,
    "seed" INTEGER NOT NULL,
    "timeLimitSeconds" INTEGER NOT NULL,
    "progress" JSONB NOT NULL,
    "worth" DECIMAL(18,2),
    "bound" DECIMAL(18,2),
    "gap" DECIMAL(9,6),
    "outcome" JSONB,
    "startedBy" TEXT NOT NULL,
    "startedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "beatAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "endedAt" TIMESTAMPTZ(6),
    CONSTRAINT "SolveRun_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "SolveRun_ended" CHECK (("state" = 'running') = ("endedAt" IS NULL)),
    CONSTRAINT "SolveRun_outcome" CHECK ("outcome" IS NOT NULL OR "state" NOT IN ('solved', 'infeasible'))
);
CREATE INDEX "SolveRun_planId_startedAt_idx" ON "SolveRun"("planId", "startedAt");
-- Of one plan one search at a time.
CREATE UNIQUE INDEX "SolveRun_running" ON "SolveRun"("planId") WHERE "state" = 'running';
ALTER TABLE "SolveRun" ADD CONSTRAINT "SolveRun_planId_fkey" FOREIGN KEY ("planId") REFERENCES "Plan"("id") ON DELETE CASCADE ON UPDATE CASCADE;
