-- Rules Prisma's schema cannot say.

INSERT INTO "DataVersion" ("id", "version") VALUES (1, 0);
ALTER TABLE "DataVersion" ADD CONSTRAINT "DataVersion_one_row" CHECK ("id" = 1);

ALTER TABLE "Site" ADD CONSTRAINT "Site_country_iso" CHECK ("country" ~ '^[A-Z]{2}$');
ALTER TABLE "Site" ADD CONSTRAINT "Site_currency_iso" CHECK ("currency" ~ '^[A-Z]{3}$');
ALTER TABLE "CurrencyRate" ADD CONSTRAINT "CurrencyRate_positive" CHECK ("perEuro" > 0);

ALTER TABLE "Line" ADD CONSTRAINT "Line_shifts_in_week" CHECK ("shiftsPerWeek" BETWEEN 0 AND 21);
ALTER TABLE "Line" ADD CONSTRAINT "Line_cost_not_negative" CHECK ("costPerHour" >= 0);
ALTER TABLE "Line" ADD CONSTRAINT "Line_buffer_not_negative" CHECK ("bufferHours" >= 0);
ALTER TABLE "Line" ADD CONSTRAINT "Line_unrecovered_share" CHECK ("unrecoveredShare" BETWEEN 0 AND 1);
ALTER TABLE "Line" ADD CONSTRAINT "Line_approval_names_owner" CHECK ("costApprovedOn" IS NULL OR "costOwner" IS NOT NULL);

ALTER TABLE "Controller" ADD CONSTRAINT "Controller_memory_percent" CHECK ("memoryPercent" BETWEEN 0 AND 100);
ALTER TABLE "Controller" ADD CONSTRAINT "Controller_firmware_not_negative" CHECK ("firmware" >= 0);

ALTER TABLE "Part" ADD CONSTRAINT "Part_repair_yield" CHECK ("repairYield" BETWEEN 0 AND 1);
ALTER TABLE "Part" ADD CONSTRAINT "Part_price_with_currency" CHECK (("price" IS NULL) = ("priceCurrency" IS NULL));
ALTER TABLE "Part" ADD CONSTRAINT "Part_price_not_negative" CHECK ("price" >= 0);
ALTER TABLE "Part" ADD CONSTRAINT "Part_lead_positive" CHECK ("leadWeeks" > 0 AND "leadWeeksP80" >= "leadWeeks");
CREATE UNIQUE INDEX "PartAlias_alias_everywhere" ON "PartAlias" ("alias") WHERE "siteId" IS NULL;
ALTER TABLE "Successor" ADD CONSTRAINT "Successor_other_part" CHECK ("partId" <> "successorId");

ALTER TABLE "LifecycleFact" ADD CONSTRAINT "LifecycleFact_of_part_or_family" CHECK (num_nonnulls("partId", "familyId") = 1);
ALTER TABLE "LifecycleFact" ADD CONSTRAINT "LifecycleFact_order_before_ship" CHECK ("lastShipOn" >= "lastOrderOn");
ALTER TABLE "LifecycleFact" ADD CONSTRAINT "LifecycleFact_notice_before_order" CHECK ("lastOrderOn" >= "noticeOn");

-- A unit is in one place at a time, and a place holds one unit.
CREATE EXTENSION IF NOT EXISTS btree_gist;
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_unit_once"
  EXCLUDE USING gist ("unitId" WITH =, daterange("fromOn", "untilOn") WITH &&);
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_position_once"
  EXCLUDE USING gist ("positionId" WITH =, daterange("fromOn", "untilOn") WITH &&);
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_forward" CHECK ("untilOn" > "fromOn");

ALTER TABLE "StockLot" ADD CONSTRAINT "StockLot_not_negative" CHECK ("quantity" >= 0);
ALTER TABLE "Event" ADD CONSTRAINT "Event_downtime_not_negative" CHECK ("downtimeHours" >= 0);
ALTER TABLE "Event" ADD CONSTRAINT "Event_wait_inside_stop" CHECK ("logisticHours" >= 0 AND "logisticHours" <= "downtimeHours");
ALTER TABLE "RepairOrder" ADD CONSTRAINT "RepairOrder_forward" CHECK ("returnedOn" >= "sentOn");

ALTER TABLE "Plan" ADD CONSTRAINT "Plan_budget_not_negative" CHECK ("budget" >= 0);
ALTER TABLE "PlanLine" ADD CONSTRAINT "PlanLine_cost_not_negative" CHECK ("cost" >= 0);
ALTER TABLE "Project" ADD CONSTRAINT "Project_budget_positive" CHECK ("budget" > 0);
ALTER TABLE "Project" ADD CONSTRAINT "Project_forward" CHECK ("endsOn" >= "startsOn");
ALTER TABLE "Milestone" ADD CONSTRAINT "Milestone_weight_positive" CHECK ("weight" > 0);

CREATE UNIQUE INDEX "Grant_once_at_site" ON "Grant" ("userId", "role", "siteId") WHERE "siteId" IS NOT NULL;
CREATE UNIQUE INDEX "Grant_once_everywhere" ON "Grant" ("userId", "role") WHERE "siteId" IS NULL;
