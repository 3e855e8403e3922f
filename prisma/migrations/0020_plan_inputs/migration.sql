-- What a plan over several years rests on, and the ways placed in it.

CREATE TYPE "PlanKind" AS ENUM ('cut', 'board');
CREATE TYPE "PlanFigureKind" AS ENUM ('budget', 'site_cap', 'reserve', 'discount', 'horizon', 'engineer_weeks', 'crews', 'weekend_hours', 'sign_off_above', 'sign_off_weeks', 'worth_per_euro', 'duty_cost', 'duty_hours', 'duty_weeks');

ALTER TABLE "Plan"
    ADD COLUMN "kind" "PlanKind" NOT NULL DEFAULT 'cut',
    ADD COLUMN "issue" INTEGER NOT NULL DEFAULT 1,
    ADD COLUMN "formerId" UUID,
    ADD COLUMN "frozen" JSONB,
    -- What was put forward is kept as it stood; what was not can still be changed.
    ADD CONSTRAINT "Plan_frozen_when_put_forward" CHECK ("kind" = 'cut' OR ("status" = 'draft') = ("frozen" IS NULL));
ALTER TABLE "Plan" ADD CONSTRAINT "Plan_formerId_fkey" FOREIGN KEY ("formerId") REFERENCES "Plan"("id") ON DELETE SET NULL ON UPDATE CASCADE;

ALTER TABLE "PlanLine" ADD COLUMN "pinReason" TEXT, ADD COLUMN "pinnedBy" TEXT;

ALTER TABLE "ShutdownWindow" ADD COLUMN "version" INTEGER NOT NULL DEFAULT 1;

CREATE TABLE "CrewRegion" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    CONSTRAINT "CrewRegion_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "CrewRegion_name_key" ON "CrewRegion"("name");

CREATE TABLE "CrewRegionSite" (
    "siteId" UUID NOT NULL,
    "regionId" UUID NOT NULL,
    CONSTRAINT "CrewRegionSite_pkey" PRIMARY KEY ("siteId")
);
CREATE INDEX "CrewRegionSite_regionId_idx" ON "CrewRegionSite"("regionId");
ALTER TABLE "CrewRegionSite" ADD CONSTRAINT "CrewRegionSite_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "CrewRegionSite" ADD CONSTRAINT "CrewRegionSite_regionId_fkey" FOREIGN KEY ("regionId") REFERENCES "CrewRegion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "PlanFigure" (
    "id" UUID NOT NULL,
    "kind" "PlanFigureKind" NOT NULL,
    "siteId" UUID,
    "regionId" UUID,
    "obligationId" UUID,
    "year" INTEGER,
    "value" DECIMAL(16,4) NOT NULL,
    "currency" TEXT,
    "source" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "evidence" "Evidence" NOT NULL DEFAULT 'documented',
    "statedOn" DATE NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "PlanFigure_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "PlanFigure_not_negative" CHECK ("value" >= 0),
    CONSTRAINT "PlanFigure_share" CHECK ("kind" NOT IN ('site_cap', 'reserve', 'discount') OR "value" <= 1),
    CONSTRAINT "PlanFigure_money" CHECK (("kind" IN ('budget', 'sign_off_above', 'duty_cost')) = ("currency" IS NOT NULL)),
    CONSTRAINT "PlanFigure_place" CHECK (
        CASE
            WHEN "kind" = 'crews' THEN "regionId" IS NOT NULL AND "siteId" IS NULL
            WHEN "kind" IN ('engineer_weeks', 'weekend_hours') THEN "siteId" IS NOT NULL AND "regionId" IS NULL
            WHEN "kind" = 'budget' THEN "regionId" IS NULL
            WHEN "kind" IN ('duty_cost', 'duty_hours', 'duty_weeks') THEN "obligationId" IS NOT NULL AND "siteId" IS NULL AND "regionId" IS NULL
            ELSE "siteId" IS NULL AND "regionId" IS NULL
        END),
    CONSTRAINT "PlanFigure_duty" CHECK ("obligationId" IS NULL OR "kind" IN ('duty_cost', 'duty_hours', 'duty_weeks')),
    CONSTRAINT "PlanFigure_year" CHECK (("kind" NOT IN ('budget', 'engineer_weeks')) OR "year" IS NOT NULL)
);
CREATE INDEX "PlanFigure_siteId_idx" ON "PlanFigure"("siteId");
CREATE INDEX "PlanFigure_regionId_idx" ON "PlanFigure"("regionId");
CREATE INDEX "PlanFigure_obligationId_idx" ON "PlanFigure"("obligationId");
-- One figure for one thing; what is not told apart by site, region or year is told apart by nothing.
CREATE UNIQUE INDEX "PlanFigure_one" ON "PlanFigure"("kind", coalesce("siteId", '00000000-0000-0000-0000-000000000000'), coalesce("regionId", '00000000-0000-0000-0000-000000000000'), coalesce("obligationId", '00000000-0000-0000-0000-000000000000'), coalesce("year", 0));
ALTER TABLE "PlanFigure" ADD CONSTRAINT "PlanFigure_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "PlanFigure" ADD CONSTRAINT "PlanFigure_regionId_fkey" FOREIGN KEY ("regionId") REFERENCES "CrewRegion"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "PlanFigure" ADD CONSTRAINT "PlanFigure_obligationId_fkey" FOREIGN KEY ("obligationId") REFERENCES "Obligation"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "ApprovalFreeze" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "freezesOn" DATE NOT NULL,
    "coversFrom" DATE NOT NULL,
    "coversTo" DATE NOT NULL,
    "source" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ApprovalFreeze_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "ApprovalFreeze_in_order" CHECK ("coversTo" >= "coversFrom")
);

CREATE TABLE "PlanPrecedence" (
    "id" UUID NOT NULL,
    "firstId" UUID NOT NULL,
    "thenId" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "PlanPrecedence_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "PlanPrecedence_two_lines" CHECK ("firstId" <> "thenId")
);
CREATE UNIQUE INDEX "PlanPrecedence_firstId_thenId_key" ON "PlanPrecedence"("firstId", "thenId");
CREATE INDEX "PlanPrecedence_thenId_idx" ON "PlanPrecedence"("thenId");
ALTER TABLE "PlanPrecedence" ADD CONSTRAINT "PlanPrecedence_firstId_fkey" FOREIGN KEY ("firstId") REFERENCES "Line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "PlanPrecedence" ADD CONSTRAINT "PlanPrecedence_thenId_fkey" FOREIGN KEY ("thenId") REFERENCES "Line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "RiskAcceptance" (
    "id" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "acceptedBy" TEXT NOT NULL,
    "acceptedOn" DATE NOT NULL,
    "until" DATE NOT NULL,
    "reason" TEXT NOT NULL,
    "loss" DECIMAL(16,2),
    "lossLow" DECIMAL(16,2),
    "lossHigh" DECIMAL(16,2),
    "endedOn" DATE,
    "recordedBy" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "RiskAcceptance_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "RiskAcceptance_in_order" CHECK ("until" >= "acceptedOn" AND "endedOn" >= "acceptedOn")
);
CREATE INDEX "RiskAcceptance_lineId_idx" ON "RiskAcceptance"("lineId");
ALTER TABLE "RiskAcceptance" ADD CONSTRAINT "RiskAcceptance_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "PlanSlot" (
    "id" UUID NOT NULL,
    "planLineId" UUID NOT NULL,
    "option" TEXT NOT NULL,
    "slot" TEXT NOT NULL,
    CONSTRAINT "PlanSlot_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "PlanSlot_planLineId_option_key" ON "PlanSlot"("planLineId", "option");
ALTER TABLE "PlanSlot" ADD CONSTRAINT "PlanSlot_planLineId_fkey" FOREIGN KEY ("planLineId") REFERENCES "PlanLine"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- What was put forward stays as it stood, whoever writes.
CREATE FUNCTION refuse_change_of_frozen_plan() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF OLD."frozen" IS NOT NULL AND NEW."frozen" IS DISTINCT FROM OLD."frozen" THEN
        RAISE EXCEPTION 'plan % was put forward and stays as it stood', OLD."id";
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER "Plan_stays_frozen" BEFORE UPDATE ON "Plan" FOR EACH ROW EXECUTE FUNCTION refuse_change_of_frozen_plan();

CREATE FUNCTION refuse_slot_of_frozen_plan() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    line_id UUID := CASE TG_OP WHEN 'DELETE' THEN OLD."planLineId" ELSE NEW."planLineId" END;
BEGIN
    IF EXISTS (SELECT FROM "PlanLine" l JOIN "Plan" p ON p."id" = l."planId" WHERE l."id" = line_id AND p."frozen" IS NOT NULL) THEN
        RAISE EXCEPTION 'the plan of line % was put forward and stays as it stood', line_id;
    END IF;
    RETURN CASE TG_OP WHEN 'DELETE' THEN OLD ELSE NEW END;
END $$;
CREATE TRIGGER "PlanSlot_stays_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "PlanSlot" FOR EACH ROW EXECUTE FUNCTION refuse_slot_of_frozen_plan();
