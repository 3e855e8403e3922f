-- Money of a project: budget by class, changes, forecast by class, files of orders and invoices, rates by month.

CREATE TYPE "CostClass" AS ENUM ('drives', 'controllers', 'engineering', 'installation', 'training', 'contingency');
CREATE TYPE "ChangeSource" AS ENUM ('contingency', 'new_money');
CREATE TYPE "ChangeState" AS ENUM ('asked', 'approved', 'declined');

-- Currencies have up to four places (ISO 4217).
ALTER TABLE "Project"
    ALTER COLUMN "budget" TYPE DECIMAL(19,4),
    ALTER COLUMN "forecast" TYPE DECIMAL(19,4),
    ADD COLUMN "budgetRate" DECIMAL(18,6),
    ADD COLUMN "budgetRatedOn" DATE,
    ADD CONSTRAINT "Project_budget_rate_dated" CHECK (("budgetRate" IS NULL) = ("budgetRatedOn" IS NULL)),
    ADD CONSTRAINT "Project_budget_rate_above_zero" CHECK ("budgetRate" > 0);

ALTER TABLE "CurrencyRate" ADD COLUMN "source" TEXT;

CREATE TABLE "CostImport" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "fileName" TEXT NOT NULL,
    "fileHash" TEXT NOT NULL,
    "added" INTEGER NOT NULL,
    "createdBy" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "takenBackAt" TIMESTAMPTZ(6),
    "takenBackBy" TEXT,
    CONSTRAINT "CostImport_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "CostImport_taken_back_by_somebody" CHECK (("takenBackAt" IS NULL) = ("takenBackBy" IS NULL))
);
CREATE INDEX "CostImport_projectId_idx" ON "CostImport"("projectId");
ALTER TABLE "CostImport" ADD CONSTRAINT "CostImport_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "CostEntry"
    ALTER COLUMN "amount" TYPE DECIMAL(19,4),
    ADD COLUMN "costClass" "CostClass",
    ADD COLUMN "orderReference" TEXT,
    ADD COLUMN "ownAmount" DECIMAL(19,4),
    ADD COLUMN "ownCurrency" TEXT,
    ADD COLUMN "rate" DECIMAL(20,10),
    ADD COLUMN "ratedOn" DATE,
    ADD COLUMN "rateSource" TEXT,
    ADD COLUMN "importId" UUID,
    ADD CONSTRAINT "CostEntry_converted_at_a_dated_rate" CHECK (
        num_nulls("ownAmount", "ownCurrency", "rate", "ratedOn", "rateSource") IN (0, 5)),
    ADD CONSTRAINT "CostEntry_rate_above_zero" CHECK ("rate" > 0),
    ADD CONSTRAINT "CostEntry_order_of_an_invoice" CHECK ("orderReference" IS NULL OR "kind" = 'actual');
CREATE INDEX "CostEntry_importId_idx" ON "CostEntry"("importId");
ALTER TABLE "CostEntry" ADD CONSTRAINT "CostEntry_importId_fkey" FOREIGN KEY ("importId") REFERENCES "CostImport"("id") ON DELETE SET NULL ON UPDATE CASCADE;

CREATE TABLE "BudgetItem" (
    "projectId" UUID NOT NULL,
    "costClass" "CostClass" NOT NULL,
    "amount" DECIMAL(19,4) NOT NULL,
    CONSTRAINT "BudgetItem_pkey" PRIMARY KEY ("projectId", "costClass"),
    CONSTRAINT "BudgetItem_not_negative" CHECK ("amount" >= 0)
);
ALTER TABLE "BudgetItem" ADD CONSTRAINT "BudgetItem_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "ChangeOrder" (
    "id" UUID NOT NULL,
    "projectId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "source" "ChangeSource" NOT NULL,
    "state" "ChangeState" NOT NULL DEFAULT 'asked',
    "askedBy" TEXT NOT NULL,
    "askedOn" DATE NOT NULL,
    "decidedBy" TEXT,
    "decidedOn" DATE,
    "decisionWhy" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ChangeOrder_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "ChangeOrder_decided_by_somebody" CHECK (
        ("state" = 'asked') = ("decidedBy" IS NULL) AND ("state" = 'asked') = ("decidedOn" IS NULL))
);
CREATE UNIQUE INDEX "ChangeOrder_projectId_number_key" ON "ChangeOrder"("projectId", "number");
ALTER TABLE "ChangeOrder" ADD CONSTRAINT "ChangeOrder_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "ChangeAmount" (
    "changeId" UUID NOT NULL,
    "costClass" "CostClass" NOT NULL,
    "amount" DECIMAL(19,4) NOT NULL,
    CONSTRAINT "ChangeAmount_pkey" PRIMARY KEY ("changeId", "costClass"),
    CONSTRAINT "ChangeAmount_not_zero" CHECK ("amount" <> 0)
);
ALTER TABLE "ChangeAmount" ADD CONSTRAINT "ChangeAmount_changeId_fkey" FOREIGN KEY ("changeId") REFERENCES "ChangeOrder"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "ClassForecast" (
    "projectId" UUID NOT NULL,
    "costClass" "CostClass" NOT NULL,
    "toOrder" DECIMAL(19,4) NOT NULL,
    "statedOn" DATE NOT NULL,
    "statedBy" TEXT NOT NULL,
    CONSTRAINT "ClassForecast_pkey" PRIMARY KEY ("projectId", "costClass"),
    CONSTRAINT "ClassForecast_not_negative" CHECK ("toOrder" >= 0)
);
ALTER TABLE "ClassForecast" ADD CONSTRAINT "ClassForecast_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "MonthRate" (
    "currency" TEXT NOT NULL,
    "month" DATE NOT NULL,
    "perEuro" DECIMAL(18,6) NOT NULL,
    "source" TEXT NOT NULL,
    "recordedBy" TEXT NOT NULL,
    CONSTRAINT "MonthRate_pkey" PRIMARY KEY ("currency", "month"),
    CONSTRAINT "MonthRate_first_day" CHECK (EXTRACT(DAY FROM "month") = 1),
    CONSTRAINT "MonthRate_above_zero" CHECK ("perEuro" > 0)
);

-- The original budget stays as it stood at the start: it may be split once, and goes only with its project.
CREATE FUNCTION refuse_change_of_original_budget() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'DELETE' AND NOT EXISTS (SELECT FROM "Project" WHERE "id" = OLD."projectId") THEN
        RETURN OLD;
    END IF;
    RAISE EXCEPTION 'the original budget of project % stays as it stood', OLD."projectId";
END $$;
CREATE TRIGGER "BudgetItem_stays" BEFORE UPDATE OR DELETE ON "BudgetItem" FOR EACH ROW EXECUTE FUNCTION refuse_change_of_original_budget();
