-- Tasks of a project with their links, plans and gates, and what each axis has done.

CREATE TYPE "GateDecision" AS ENUM ('open', 'passed', 'held');
CREATE TYPE "AxisStepKind" AS ENUM ('surveyed', 'engineered', 'wired', 'powered', 'tuned', 'validated', 'accepted');
ALTER TABLE "Milestone" ADD COLUMN "axisRound" INTEGER,
ADD COLUMN "axisStep" "AxisStepKind";

CREATE TABLE "ProjectTask" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "days" INTEGER NOT NULL,
    "inWindow" BOOLEAN NOT NULL DEFAULT false,
    "who" TEXT NOT NULL DEFAULT '',
    "crews" INTEGER,
    "engineers" DECIMAL(4,1),
    "notBefore" DATE,
    "plannedStart" DATE,
    "plannedFinish" DATE,
    "baselineStart" DATE,
    "baselineFinish" DATE,
    "startedOn" DATE,
    "finishedOn" DATE,
    "milestoneId" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ProjectTask_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "TaskLink" (
    "taskId" UUID NOT NULL,
    "afterId" UUID NOT NULL,
    "lag" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "TaskLink_pkey" PRIMARY KEY ("taskId","afterId")
);

CREATE TABLE "Replan" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "madeOn" DATE NOT NULL,
    "madeBy" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "before" JSONB NOT NULL,
    "after" JSONB NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Replan_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ProjectGate" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "taskId" UUID,
    "decision" "GateDecision" NOT NULL DEFAULT 'open',
    "decidedOn" DATE,
    "decidedBy" TEXT,
    "reason" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ProjectGate_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "GateItem" (
    "id" UUID NOT NULL,
    "gateId" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "who" TEXT NOT NULL DEFAULT '',
    "doneOn" DATE,
    "doneBy" TEXT,
    CONSTRAINT "GateItem_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "AxisStep" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "axisId" UUID NOT NULL,
    "step" "AxisStepKind" NOT NULL,
    "doneOn" DATE NOT NULL,
    "doneBy" TEXT NOT NULL,
    "recordedBy" TEXT NOT NULL,
    CONSTRAINT "AxisStep_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ProjectAxis" (
    "projectId" UUID NOT NULL,
    "axisId" UUID NOT NULL,
    "round" INTEGER NOT NULL,
    CONSTRAINT "ProjectAxis_pkey" PRIMARY KEY ("projectId","axisId")
);
CREATE INDEX "ProjectTask_milestoneId_idx" ON "ProjectTask"("milestoneId");
CREATE UNIQUE INDEX "ProjectTask_projectId_code_key" ON "ProjectTask"("projectId", "code");
CREATE INDEX "TaskLink_afterId_idx" ON "TaskLink"("afterId");
CREATE UNIQUE INDEX "Replan_projectId_number_key" ON "Replan"("projectId", "number");
CREATE INDEX "ProjectGate_taskId_idx" ON "ProjectGate"("taskId");
CREATE UNIQUE INDEX "ProjectGate_projectId_sequence_key" ON "ProjectGate"("projectId", "sequence");
CREATE UNIQUE INDEX "GateItem_gateId_sequence_key" ON "GateItem"("gateId", "sequence");
CREATE INDEX "AxisStep_axisId_idx" ON "AxisStep"("axisId");
CREATE UNIQUE INDEX "AxisStep_projectId_axisId_step_key" ON "AxisStep"("projectId", "axisId", "step");
CREATE INDEX "ProjectAxis_axisId_idx" ON "ProjectAxis"("axisId");
ALTER TABLE "ProjectTask" ADD CONSTRAINT "ProjectTask_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ProjectTask" ADD CONSTRAINT "ProjectTask_milestoneId_fkey" FOREIGN KEY ("milestoneId") REFERENCES "Milestone"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "TaskLink" ADD CONSTRAINT "TaskLink_taskId_fkey" FOREIGN KEY ("taskId") REFERENCES "ProjectTask"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "TaskLink" ADD CONSTRAINT "TaskLink_afterId_fkey" FOREIGN KEY ("afterId") REFERENCES "ProjectTask"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "Replan" ADD CONSTRAINT "Replan_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ProjectGate" ADD CONSTRAINT "ProjectGate_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ProjectGate" ADD CONSTRAINT "ProjectGate_taskId_fkey" FOREIGN KEY ("taskId") REFERENCES "ProjectTask"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "GateItem" ADD CONSTRAINT "GateItem_gateId_fkey" FOREIGN KEY ("gateId") REFERENCES "ProjectGate"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "AxisStep" ADD CONSTRAINT "AxisStep_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "AxisStep" ADD CONSTRAINT "AxisStep_axisId_fkey" FOREIGN KEY ("axisId") REFERENCES "Axis"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ProjectAxis" ADD CONSTRAINT "ProjectAxis_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ProjectAxis" ADD CONSTRAINT "ProjectAxis_axisId_fkey" FOREIGN KEY ("axisId") REFERENCES "Axis"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "ProjectTask" ADD CONSTRAINT "ProjectTask_days_from_one" CHECK ("days" BETWEEN 1 AND 2000),
ADD CONSTRAINT "ProjectTask_hands_not_negative" CHECK ("crews" >= 0 AND "engineers" >= 0),
ADD CONSTRAINT "ProjectTask_planned_whole" CHECK (num_nonnulls("plannedStart", "plannedFinish") IN (0, 2) AND "plannedStart" <= "plannedFinish"),
ADD CONSTRAINT "ProjectTask_baseline_whole" CHECK (num_nonnulls("baselineStart", "baselineFinish") IN (0, 2) AND "baselineStart" <= "baselineFinish"),
ADD CONSTRAINT "ProjectTask_begun_before_finished" CHECK ("finishedOn" IS NULL OR ("startedOn" IS NOT NULL AND "startedOn" <= "finishedOn"));
ALTER TABLE "TaskLink" ADD CONSTRAINT "TaskLink_lag_not_negative" CHECK ("lag" BETWEEN 0 AND 2000),
ADD CONSTRAINT "TaskLink_not_itself" CHECK ("taskId" <> "afterId");
ALTER TABLE "Replan" ADD CONSTRAINT "Replan_has_a_reason" CHECK (btrim("reason") <> '');
ALTER TABLE "ProjectGate" ADD CONSTRAINT "ProjectGate_decided_by_somebody"
  CHECK (CASE WHEN "decision" = 'open' THEN num_nonnulls("decidedOn", "decidedBy") = 0 ELSE num_nonnulls("decidedOn", "decidedBy") = 2 END),
ADD CONSTRAINT "ProjectGate_held_for_a_reason" CHECK ("decision" <> 'held' OR btrim("reason") <> '');
ALTER TABLE "GateItem" ADD CONSTRAINT "GateItem_done_by_somebody" CHECK (("doneOn" IS NULL) = ("doneBy" IS NULL));
ALTER TABLE "ProjectAxis" ADD CONSTRAINT "ProjectAxis_round_not_negative" CHECK ("round" BETWEEN 0 AND 9);
ALTER TABLE "Milestone" ADD CONSTRAINT "Milestone_round_of_a_step" CHECK ("axisRound" IS NULL OR ("axisStep" IS NOT NULL AND "axisRound" BETWEEN 1 AND 9));
