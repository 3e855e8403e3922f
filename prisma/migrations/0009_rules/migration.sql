CREATE TYPE "RuleKind" AS ENUM ('controller_floor', 'ceiling', 'memory_growth', 'card_lost', 'motor_match', 'feedback_match', 'hardware_revision', 'ring_whole');

CREATE TABLE "CompatibilityRule" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "kind" "RuleKind" NOT NULL,
    "terms" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "evidence" "Evidence" NOT NULL,
    "retired" BOOLEAN NOT NULL DEFAULT false,
    "changedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "changedBy" TEXT NOT NULL,

    CONSTRAINT "CompatibilityRule_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "CompatibilityRule_code_version_key" ON "CompatibilityRule"("code", "version");
ALTER TABLE "CompatibilityRule" ADD CONSTRAINT "CompatibilityRule_version_from_one" CHECK ("version" >= 1);

-- A version that was written stays as it was written.
CREATE FUNCTION "CompatibilityRule_stays"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'A version of a compatibility rule is never changed or removed; write a new one';
END $$;
CREATE TRIGGER "CompatibilityRule_append_only" BEFORE UPDATE OR DELETE ON "CompatibilityRule"
  FOR EACH ROW EXECUTE FUNCTION "CompatibilityRule_stays"();

ALTER TABLE "Controller" ADD COLUMN "hardware" TEXT;
ALTER TABLE "Controller" ADD COLUMN "axisLimit" INTEGER;
ALTER TABLE "Controller" ADD COLUMN "leadsLineId" UUID;
CREATE UNIQUE INDEX "Controller_leadsLineId_key" ON "Controller"("leadsLineId");
ALTER TABLE "Controller" ADD CONSTRAINT "Controller_leadsLineId_fkey" FOREIGN KEY ("leadsLineId") REFERENCES "Line"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "Controller" ADD CONSTRAINT "Controller_axis_limit_positive" CHECK ("axisLimit" > 0);

ALTER TABLE "Part" ADD COLUMN "powerKw" DECIMAL(8,3);
ALTER TABLE "Part" ADD CONSTRAINT "Part_power_positive" CHECK ("powerKw" > 0);

-- The lowest level for new drives is a rule now: it names families and controllers, which the setting could not.
DELETE FROM "Setting" WHERE "key" = 'minimumFirmware';
