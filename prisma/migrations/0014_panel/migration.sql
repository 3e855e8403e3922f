ALTER TYPE "RuleKind" ADD VALUE 'axis_ceiling';

CREATE TYPE "HomingMethod" AS ENUM ('to_switch', 'to_marker', 'to_switch_then_marker', 'to_end_stop', 'absolute_encoder', 'none');

CREATE TABLE "Panel" (
    "id" UUID NOT NULL,
    "machineId" UUID NOT NULL,
    "designation" TEXT NOT NULL,
    "name" TEXT,
    "location" TEXT,
    CONSTRAINT "Panel_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "Panel_machineId_designation_key" ON "Panel"("machineId", "designation");
CREATE INDEX "Panel_designation_idx" ON "Panel"("designation");
ALTER TABLE "Panel" ADD CONSTRAINT "Panel_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "Position" ADD COLUMN "panelId" UUID;
CREATE INDEX "Position_panelId_idx" ON "Position"("panelId");
ALTER TABLE "Position" ADD CONSTRAINT "Position_panelId_fkey" FOREIGN KEY ("panelId") REFERENCES "Panel"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "Network" ADD COLUMN "profileFamily" INTEGER CHECK ("profileFamily" BETWEEN 1 AND 99);
ALTER TABLE "Part" ADD COLUMN "profileFamily" INTEGER CHECK ("profileFamily" BETWEEN 1 AND 99);

ALTER TABLE "Axis"
    ADD COLUMN "powerCable" TEXT,
    ADD COLUMN "powerCableLength" DECIMAL(7,2) CHECK ("powerCableLength" >= 0),
    ADD COLUMN "powerCableInChain" BOOLEAN,
    ADD COLUMN "powerCableEvidence" "Evidence",
    ADD COLUMN "powerCableReadOn" DATE,
    ADD COLUMN "feedbackCable" TEXT,
    ADD COLUMN "feedbackCableLength" DECIMAL(7,2) CHECK ("feedbackCableLength" >= 0),
    ADD COLUMN "feedbackCableInChain" BOOLEAN,
    ADD COLUMN "feedbackCableEvidence" "Evidence",
    ADD COLUMN "feedbackCableReadOn" DATE,
    ADD COLUMN "travel" DECIMAL(14,4) CHECK ("travel" >= 0),
    ADD COLUMN "hardLow" DECIMAL(14,4),
    ADD COLUMN "hardHigh" DECIMAL(14,4),
    ADD COLUMN "softLow" DECIMAL(14,4),
    ADD COLUMN "softHigh" DECIMAL(14,4),
    ADD COLUMN "travelEvidence" "Evidence",
    ADD COLUMN "travelReadOn" DATE,
    ADD COLUMN "homing" "HomingMethod",
    ADD COLUMN "homeOffset" DECIMAL(14,4),
    ADD COLUMN "homingEvidence" "Evidence",
    ADD COLUMN "homingReadOn" DATE,
    ADD CONSTRAINT "Axis_hard_limits" CHECK ("hardLow" <= "hardHigh"),
    ADD CONSTRAINT "Axis_soft_limits" CHECK ("softLow" <= "softHigh");
