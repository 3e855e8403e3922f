-- CreateEnum
CREATE TYPE "Evidence" AS ENUM ('measured', 'documented', 'inferred', 'assumed');

-- CreateEnum
CREATE TYPE "ItemClass" AS ENUM ('drive', 'motor', 'controller', 'power_supply', 'io', 'hmi', 'converter', 'network_card');

-- CreateEnum
CREATE TYPE "Role" AS ENUM ('viewer', 'technician', 'planner', 'engineer', 'approver', 'admin');

-- CreateEnum
CREATE TYPE "PlanStatus" AS ENUM ('draft', 'put_forward', 'funded', 'declined');

-- CreateEnum
CREATE TYPE "Pin" AS ENUM ('none', 'in', 'out');

-- CreateEnum
CREATE TYPE "ProjectStatus" AS ENUM ('funded', 'in_work', 'proving', 'accepted', 'closed', 'parked');

-- CreateEnum
CREATE TYPE "CostKind" AS ENUM ('committed', 'actual');

-- CreateEnum
CREATE TYPE "NetworkKind" AS ENUM ('fibre_ring', 'ethernet', 'analogue', 'pulse', 'unknown');

-- CreateEnum
CREATE TYPE "ImportState" AS ENUM ('staged', 'committed', 'undone');

-- CreateEnum
CREATE TYPE "StockState" AS ENUM ('usable', 'unproven', 'wrong_revision', 'on_hold', 'reserved', 'removed_untested', 'beyond_repair');

-- CreateEnum
CREATE TYPE "EventKind" AS ENUM ('failure', 'no_fault_found', 'removal');

-- CreateTable
CREATE TABLE "DataVersion" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "version" BIGINT NOT NULL DEFAULT 0,

    CONSTRAINT "DataVersion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Setting" (
    "key" TEXT NOT NULL,
    "value" JSONB NOT NULL,
    "changedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Setting_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Family" (
    "id" UUID NOT NULL,
    "maker" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "itemClass" "ItemClass" NOT NULL,
    "description" TEXT,

    CONSTRAINT "Family_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Part" (
    "id" UUID NOT NULL,
    "maker" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "itemClass" "ItemClass" NOT NULL,
    "familyId" UUID,
    "price" DECIMAL(14,2),
    "priceCurrency" TEXT,
    "pricedOn" DATE,
    "leadWeeks" DECIMAL(6,1),
    "leadWeeksP80" DECIMAL(6,1),
    "repairYield" DECIMAL(4,3),
    "repairTurnaroundDays" INTEGER,

    CONSTRAINT "Part_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PartAlias" (
    "id" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "siteId" UUID,
    "alias" TEXT NOT NULL,

    CONSTRAINT "PartAlias_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Successor" (
    "id" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "successorId" UUID NOT NULL,
    "condition" TEXT,

    CONSTRAINT "Successor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "LifecycleFact" (
    "id" UUID NOT NULL,
    "partId" UUID,
    "familyId" UUID,
    "noticeOn" DATE,
    "lastOrderOn" DATE,
    "lastShipOn" DATE,
    "repairUntilOn" DATE,
    "orderByOn" DATE,
    "source" TEXT NOT NULL,
    "checkedOn" DATE NOT NULL,
    "recordedOn" DATE NOT NULL,
    "evidence" "Evidence" NOT NULL DEFAULT 'documented',

    CONSTRAINT "LifecycleFact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "role" TEXT,
    "banned" BOOLEAN DEFAULT false,
    "banReason" TEXT,
    "banExpires" TIMESTAMPTZ(6),

    CONSTRAINT "User_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL,
    "expiresAt" TIMESTAMPTZ(6) NOT NULL,
    "token" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(6) NOT NULL,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    "userId" TEXT NOT NULL,
    "impersonatedBy" TEXT,

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT NOT NULL,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" TIMESTAMPTZ(6),
    "refreshTokenExpiresAt" TIMESTAMPTZ(6),
    "scope" TEXT,
    "password" TEXT,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "Account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" TIMESTAMPTZ(6) NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RateLimit" (
    "id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "lastRequest" BIGINT NOT NULL,

    CONSTRAINT "RateLimit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Grant" (
    "id" UUID NOT NULL,
    "userId" TEXT NOT NULL,
    "role" "Role" NOT NULL,
    "siteId" UUID,

    CONSTRAINT "Grant_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" UUID NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "usedAt" TIMESTAMPTZ(6),

    CONSTRAINT "Invitation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Plan" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "year" INTEGER NOT NULL,
    "budget" DECIMAL(16,2) NOT NULL,
    "status" "PlanStatus" NOT NULL DEFAULT 'draft',
    "asOf" DATE NOT NULL,
    "rankedBy" TEXT NOT NULL,
    "dataVersion" BIGINT NOT NULL,
    "engine" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdBy" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Plan_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PlanLine" (
    "id" UUID NOT NULL,
    "planId" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "rank" INTEGER NOT NULL,
    "cost" DECIMAL(16,2) NOT NULL,
    "stopLoss" DECIMAL(16,2) NOT NULL,
    "score" DECIMAL(6,3) NOT NULL,
    "funded" BOOLEAN NOT NULL,
    "pin" "Pin" NOT NULL DEFAULT 'none',

    CONSTRAINT "PlanLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Project" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "planLineId" UUID,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "status" "ProjectStatus" NOT NULL DEFAULT 'funded',
    "currency" TEXT NOT NULL,
    "budget" DECIMAL(16,2) NOT NULL,
    "forecast" DECIMAL(16,2),
    "startsOn" DATE,
    "endsOn" DATE,
    "cause" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Project_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CostEntry" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "kind" "CostKind" NOT NULL,
    "amount" DECIMAL(16,2) NOT NULL,
    "spentOn" DATE NOT NULL,
    "text" TEXT NOT NULL,
    "reference" TEXT NOT NULL,

    CONSTRAINT "CostEntry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Milestone" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "weight" DECIMAL(8,3) NOT NULL,
    "dueOn" DATE,
    "doneOn" DATE,

    CONSTRAINT "Milestone_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Site" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "country" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,

    CONSTRAINT "Site_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CurrencyRate" (
    "currency" TEXT NOT NULL,
    "perEuro" DECIMAL(18,6) NOT NULL,
    "validFrom" DATE NOT NULL,

    CONSTRAINT "CurrencyRate_pkey" PRIMARY KEY ("currency")
);

-- CreateTable
CREATE TABLE "Line" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "shiftsPerWeek" INTEGER,
    "inServiceYear" INTEGER,
    "costPerHour" DECIMAL(14,2),
    "costOwner" TEXT,
    "costApprovedOn" DATE,
    "costValidUntil" DATE,
    "costEvidence" "Evidence" NOT NULL DEFAULT 'assumed',
    "bufferHours" DECIMAL(8,2),
    "unrecoveredShare" DECIMAL(4,3) NOT NULL DEFAULT 1,
    "note" TEXT,

    CONSTRAINT "Line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Machine" (
    "id" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "inServiceYear" INTEGER,
    "controllerId" UUID,

    CONSTRAINT "Machine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Controller" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "designation" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "firmware" INTEGER,
    "firmwareRaw" TEXT,
    "memoryPercent" DECIMAL(5,1),
    "readOn" DATE,
    "evidence" "Evidence" NOT NULL DEFAULT 'assumed',

    CONSTRAINT "Controller_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Network" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" "NetworkKind" NOT NULL,

    CONSTRAINT "Network_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Axis" (
    "id" UUID NOT NULL,
    "machineId" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT,
    "inServiceYear" INTEGER,
    "networkId" UUID,
    "nodeAddress" INTEGER,
    "ringOrder" INTEGER,
    "feedback" TEXT,
    "countsPerRev" INTEGER,
    "motorRevs" INTEGER,
    "loadRevs" INTEGER,
    "unitsPerLoadRev" DECIMAL(14,6),
    "travelUnit" TEXT,
    "evidence" "Evidence" NOT NULL DEFAULT 'documented',

    CONSTRAINT "Axis_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "userId" TEXT,
    "deed" TEXT NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "siteId" UUID,
    "before" JSONB,
    "after" JSONB,

    CONSTRAINT "AuditEntry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ImportBatch" (
    "id" UUID NOT NULL,
    "register" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "fileHash" TEXT NOT NULL,
    "fileBytes" BYTEA NOT NULL,
    "mapping" JSONB NOT NULL,
    "dialect" JSONB NOT NULL,
    "state" "ImportState" NOT NULL DEFAULT 'staged',
    "createdBy" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "committedAt" TIMESTAMPTZ(6),
    "undoneAt" TIMESTAMPTZ(6),
    "siteCodes" TEXT[],
    "added" INTEGER NOT NULL DEFAULT 0,
    "changed" INTEGER NOT NULL DEFAULT 0,
    "unchanged" INTEGER NOT NULL DEFAULT 0,
    "refused" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "ImportBatch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ImportChange" (
    "id" UUID NOT NULL,
    "batchId" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "rowNumber" INTEGER NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB NOT NULL,

    CONSTRAINT "ImportChange_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ImportMapping" (
    "id" UUID NOT NULL,
    "register" TEXT NOT NULL,
    "headers" TEXT NOT NULL,
    "mapping" JSONB NOT NULL,
    "changedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ImportMapping_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Evaluation" (
    "id" UUID NOT NULL,
    "asOf" DATE NOT NULL,
    "dataVersion" BIGINT NOT NULL,
    "engine" TEXT NOT NULL,
    "assumptions" JSONB NOT NULL,
    "takenAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Evaluation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "EvaluatedLine" (
    "evaluationId" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "rankByLoss" INTEGER,
    "rankByScore" INTEGER NOT NULL,
    "result" JSONB NOT NULL,

    CONSTRAINT "EvaluatedLine_pkey" PRIMARY KEY ("evaluationId","lineId")
);

-- CreateTable
CREATE TABLE "EvaluatedPool" (
    "evaluationId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "result" JSONB NOT NULL,

    CONSTRAINT "EvaluatedPool_pkey" PRIMARY KEY ("evaluationId","partId")
);

-- CreateTable
CREATE TABLE "Position" (
    "id" UUID NOT NULL,
    "machineId" UUID NOT NULL,
    "axisId" UUID,
    "itemClass" "ItemClass" NOT NULL,
    "designation" TEXT NOT NULL,
    "partId" UUID,
    "evidence" "Evidence" NOT NULL DEFAULT 'documented',

    CONSTRAINT "Position_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Unit" (
    "id" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "serial" TEXT NOT NULL,
    "revision" TEXT,
    "madeYear" INTEGER,

    CONSTRAINT "Unit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Placement" (
    "id" UUID NOT NULL,
    "unitId" UUID NOT NULL,
    "positionId" UUID NOT NULL,
    "fromOn" DATE,
    "untilOn" DATE,

    CONSTRAINT "Placement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockLot" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "bin" TEXT NOT NULL,
    "revision" TEXT NOT NULL DEFAULT '',
    "state" "StockState" NOT NULL,
    "quantity" INTEGER,
    "lastPoweredOn" DATE,
    "countedOn" DATE,
    "reservedFor" TEXT,
    "note" TEXT,
    "evidence" "Evidence" NOT NULL DEFAULT 'documented',

    CONSTRAINT "StockLot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Event" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "lineId" UUID,
    "machineId" UUID,
    "positionId" UUID,
    "partId" UUID,
    "itemClass" "ItemClass",
    "kind" "EventKind" NOT NULL,
    "happenedAt" TIMESTAMPTZ(6) NOT NULL,
    "downtimeHours" DECIMAL(8,2),
    "logisticHours" DECIMAL(8,2),
    "spareAtHand" BOOLEAN,
    "source" TEXT NOT NULL,
    "reference" TEXT NOT NULL,
    "text" TEXT,
    "commonCause" TEXT,
    "setAside" TEXT,

    CONSTRAINT "Event_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RepairOrder" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "reference" TEXT NOT NULL,
    "serial" TEXT,
    "sentOn" DATE NOT NULL,
    "dueOn" DATE,
    "returnedOn" DATE,
    "finding" TEXT,

    CONSTRAINT "RepairOrder_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Family_maker_name_key" ON "Family"("maker", "name");

-- CreateIndex
CREATE INDEX "Part_familyId_idx" ON "Part"("familyId");

-- CreateIndex
CREATE UNIQUE INDEX "Part_maker_number_key" ON "Part"("maker", "number");

-- CreateIndex
CREATE INDEX "PartAlias_partId_idx" ON "PartAlias"("partId");

-- CreateIndex
CREATE UNIQUE INDEX "PartAlias_alias_siteId_key" ON "PartAlias"("alias", "siteId");

-- CreateIndex
CREATE UNIQUE INDEX "Successor_partId_successorId_key" ON "Successor"("partId", "successorId");

-- CreateIndex
CREATE INDEX "LifecycleFact_partId_idx" ON "LifecycleFact"("partId");

-- CreateIndex
CREATE INDEX "LifecycleFact_familyId_idx" ON "LifecycleFact"("familyId");

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_userId_idx" ON "Session"("userId");

-- CreateIndex
CREATE INDEX "Account_userId_idx" ON "Account"("userId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "RateLimit_key_key" ON "RateLimit"("key");

-- CreateIndex
CREATE INDEX "Grant_userId_idx" ON "Grant"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");

-- CreateIndex
CREATE INDEX "PlanLine_lineId_idx" ON "PlanLine"("lineId");

-- CreateIndex
CREATE UNIQUE INDEX "PlanLine_planId_lineId_key" ON "PlanLine"("planId", "lineId");

-- CreateIndex
CREATE UNIQUE INDEX "Project_planLineId_key" ON "Project"("planLineId");

-- CreateIndex
CREATE UNIQUE INDEX "Project_code_key" ON "Project"("code");

-- CreateIndex
CREATE INDEX "Project_siteId_idx" ON "Project"("siteId");

-- CreateIndex
CREATE INDEX "Project_lineId_idx" ON "Project"("lineId");

-- CreateIndex
CREATE UNIQUE INDEX "CostEntry_projectId_kind_reference_key" ON "CostEntry"("projectId", "kind", "reference");

-- CreateIndex
CREATE UNIQUE INDEX "Milestone_projectId_sequence_key" ON "Milestone"("projectId", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "Site_code_key" ON "Site"("code");

-- CreateIndex
CREATE UNIQUE INDEX "Line_code_key" ON "Line"("code");

-- CreateIndex
CREATE INDEX "Line_siteId_idx" ON "Line"("siteId");

-- CreateIndex
CREATE INDEX "Machine_controllerId_idx" ON "Machine"("controllerId");

-- CreateIndex
CREATE UNIQUE INDEX "Machine_lineId_code_key" ON "Machine"("lineId", "code");

-- CreateIndex
CREATE UNIQUE INDEX "Controller_siteId_designation_key" ON "Controller"("siteId", "designation");

-- CreateIndex
CREATE UNIQUE INDEX "Network_siteId_name_key" ON "Network"("siteId", "name");

-- CreateIndex
CREATE INDEX "Axis_networkId_idx" ON "Axis"("networkId");

-- CreateIndex
CREATE UNIQUE INDEX "Axis_machineId_code_key" ON "Axis"("machineId", "code");

-- CreateIndex
CREATE INDEX "AuditEntry_entity_entityId_idx" ON "AuditEntry"("entity", "entityId");

-- CreateIndex
CREATE INDEX "AuditEntry_at_idx" ON "AuditEntry"("at");

-- CreateIndex
CREATE INDEX "ImportBatch_fileHash_idx" ON "ImportBatch"("fileHash");

-- CreateIndex
CREATE INDEX "ImportChange_entity_entityId_idx" ON "ImportChange"("entity", "entityId");

-- CreateIndex
CREATE UNIQUE INDEX "ImportChange_batchId_sequence_key" ON "ImportChange"("batchId", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "ImportMapping_register_headers_key" ON "ImportMapping"("register", "headers");

-- CreateIndex
CREATE UNIQUE INDEX "Evaluation_asOf_dataVersion_engine_key" ON "Evaluation"("asOf", "dataVersion", "engine");

-- CreateIndex
CREATE INDEX "Position_partId_idx" ON "Position"("partId");

-- CreateIndex
CREATE INDEX "Position_axisId_idx" ON "Position"("axisId");

-- CreateIndex
CREATE UNIQUE INDEX "Position_machineId_designation_key" ON "Position"("machineId", "designation");

-- CreateIndex
CREATE UNIQUE INDEX "Unit_partId_serial_key" ON "Unit"("partId", "serial");

-- CreateIndex
CREATE INDEX "Placement_unitId_idx" ON "Placement"("unitId");

-- CreateIndex
CREATE INDEX "Placement_positionId_idx" ON "Placement"("positionId");

-- CreateIndex
CREATE INDEX "StockLot_partId_idx" ON "StockLot"("partId");

-- CreateIndex
CREATE UNIQUE INDEX "StockLot_siteId_partId_bin_revision_state_key" ON "StockLot"("siteId", "partId", "bin", "revision", "state");

-- CreateIndex
CREATE INDEX "Event_partId_happenedAt_idx" ON "Event"("partId", "happenedAt");

-- CreateIndex
CREATE INDEX "Event_lineId_idx" ON "Event"("lineId");

-- CreateIndex
CREATE INDEX "Event_machineId_idx" ON "Event"("machineId");

-- CreateIndex
CREATE INDEX "Event_positionId_idx" ON "Event"("positionId");

-- CreateIndex
CREATE UNIQUE INDEX "Event_siteId_source_reference_key" ON "Event"("siteId", "source", "reference");

-- CreateIndex
CREATE INDEX "RepairOrder_partId_idx" ON "RepairOrder"("partId");

-- CreateIndex
CREATE UNIQUE INDEX "RepairOrder_siteId_reference_key" ON "RepairOrder"("siteId", "reference");

-- AddForeignKey
ALTER TABLE "Part" ADD CONSTRAINT "Part_familyId_fkey" FOREIGN KEY ("familyId") REFERENCES "Family"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartAlias" ADD CONSTRAINT "PartAlias_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartAlias" ADD CONSTRAINT "PartAlias_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Successor" ADD CONSTRAINT "Successor_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Successor" ADD CONSTRAINT "Successor_successorId_fkey" FOREIGN KEY ("successorId") REFERENCES "Part"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LifecycleFact" ADD CONSTRAINT "LifecycleFact_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LifecycleFact" ADD CONSTRAINT "LifecycleFact_familyId_fkey" FOREIGN KEY ("familyId") REFERENCES "Family"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Account" ADD CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Grant" ADD CONSTRAINT "Grant_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Grant" ADD CONSTRAINT "Grant_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlanLine" ADD CONSTRAINT "PlanLine_planId_fkey" FOREIGN KEY ("planId") REFERENCES "Plan"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlanLine" ADD CONSTRAINT "PlanLine_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Project" ADD CONSTRAINT "Project_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Project" ADD CONSTRAINT "Project_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Project" ADD CONSTRAINT "Project_planLineId_fkey" FOREIGN KEY ("planLineId") REFERENCES "PlanLine"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CostEntry" ADD CONSTRAINT "CostEntry_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Milestone" ADD CONSTRAINT "Milestone_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Line" ADD CONSTRAINT "Line_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Machine" ADD CONSTRAINT "Machine_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Machine" ADD CONSTRAINT "Machine_controllerId_fkey" FOREIGN KEY ("controllerId") REFERENCES "Controller"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Controller" ADD CONSTRAINT "Controller_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Network" ADD CONSTRAINT "Network_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Axis" ADD CONSTRAINT "Axis_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Axis" ADD CONSTRAINT "Axis_networkId_fkey" FOREIGN KEY ("networkId") REFERENCES "Network"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuditEntry" ADD CONSTRAINT "AuditEntry_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ImportChange" ADD CONSTRAINT "ImportChange_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "ImportBatch"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EvaluatedLine" ADD CONSTRAINT "EvaluatedLine_evaluationId_fkey" FOREIGN KEY ("evaluationId") REFERENCES "Evaluation"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EvaluatedLine" ADD CONSTRAINT "EvaluatedLine_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EvaluatedPool" ADD CONSTRAINT "EvaluatedPool_evaluationId_fkey" FOREIGN KEY ("evaluationId") REFERENCES "Evaluation"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EvaluatedPool" ADD CONSTRAINT "EvaluatedPool_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Position" ADD CONSTRAINT "Position_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Position" ADD CONSTRAINT "Position_axisId_fkey" FOREIGN KEY ("axisId") REFERENCES "Axis"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Position" ADD CONSTRAINT "Position_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Unit" ADD CONSTRAINT "Unit_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_unitId_fkey" FOREIGN KEY ("unitId") REFERENCES "Unit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockLot" ADD CONSTRAINT "StockLot_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockLot" ADD CONSTRAINT "StockLot_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RepairOrder" ADD CONSTRAINT "RepairOrder_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RepairOrder" ADD CONSTRAINT "RepairOrder_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
