CREATE TYPE "EventVerdict" AS ENUM ('same', 'different');

CREATE TABLE "Notice" (
    "id" UUID NOT NULL,
    "maker" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "noticeOn" DATE,
    "lastOrderOn" DATE,
    "lastShipOn" DATE,
    "repairUntilOn" DATE,
    "orderByOn" DATE,
    "quoteWeeks" DECIMAL(4,1) NOT NULL,
    "approvalWeeks" DECIMAL(4,1) NOT NULL,
    "purchaseWeeks" DECIMAL(4,1) NOT NULL,
    "patterns" TEXT NOT NULL,
    "successor" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "evidence" "Evidence" NOT NULL DEFAULT 'documented',
    "checkedOn" DATE NOT NULL,
    "recordedOn" DATE NOT NULL,
    "recordedBy" TEXT NOT NULL,
    "fileName" TEXT,
    "fileBytes" BYTEA,
    "fileHash" TEXT,
    "takenBackAt" TIMESTAMPTZ(6),
    "takenBackBy" TEXT,
    CONSTRAINT "Notice_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "Notice_file_whole" CHECK (("fileBytes" IS NULL) = ("fileHash" IS NULL)),
    CONSTRAINT "Notice_weeks_not_negative" CHECK ("quoteWeeks" >= 0 AND "approvalWeeks" >= 0 AND "purchaseWeeks" >= 0)
);

CREATE TABLE "NoticePart" (
    "noticeId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "factId" UUID,
    "successorRowId" UUID,
    CONSTRAINT "NoticePart_pkey" PRIMARY KEY ("noticeId","partId")
);
CREATE INDEX "NoticePart_partId_idx" ON "NoticePart"("partId");

CREATE TABLE "BuyDecision" (
    "id" UUID NOT NULL,
    "familyId" UUID NOT NULL,
    "noticeId" UUID,
    "decidedOn" DATE NOT NULL,
    "decidedBy" TEXT NOT NULL,
    "sheet" TEXT NOT NULL,
    "sheetHash" TEXT NOT NULL,
    "siteIds" UUID[],
    "supersededById" UUID,
    CONSTRAINT "BuyDecision_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "BuyDecision_not_by_itself" CHECK ("supersededById" <> "id")
);
CREATE UNIQUE INDEX "BuyDecision_supersededById_key" ON "BuyDecision"("supersededById");
CREATE INDEX "BuyDecision_familyId_idx" ON "BuyDecision"("familyId");
CREATE INDEX "BuyDecision_noticeId_idx" ON "BuyDecision"("noticeId");

CREATE TABLE "EventMatch" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "keptId" UUID NOT NULL,
    "otherId" UUID NOT NULL,
    "verdict" "EventVerdict" NOT NULL,
    "reason" TEXT NOT NULL,
    "filled" JSONB NOT NULL,
    "decidedOn" DATE NOT NULL,
    "decidedBy" TEXT NOT NULL,
    CONSTRAINT "EventMatch_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "EventMatch_two_records" CHECK ("keptId" <> "otherId")
);
CREATE UNIQUE INDEX "EventMatch_keptId_otherId_key" ON "EventMatch"("keptId", "otherId");
CREATE INDEX "EventMatch_otherId_idx" ON "EventMatch"("otherId");
CREATE INDEX "EventMatch_siteId_idx" ON "EventMatch"("siteId");
-- A record is another view of one event at most.
CREATE UNIQUE INDEX "EventMatch_one_event" ON "EventMatch"("otherId") WHERE "verdict" = 'same';

ALTER TABLE "NoticePart" ADD CONSTRAINT "NoticePart_noticeId_fkey" FOREIGN KEY ("noticeId") REFERENCES "Notice"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "NoticePart" ADD CONSTRAINT "NoticePart_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "BuyDecision" ADD CONSTRAINT "BuyDecision_familyId_fkey" FOREIGN KEY ("familyId") REFERENCES "Family"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "BuyDecision" ADD CONSTRAINT "BuyDecision_noticeId_fkey" FOREIGN KEY ("noticeId") REFERENCES "Notice"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "BuyDecision" ADD CONSTRAINT "BuyDecision_supersededById_fkey" FOREIGN KEY ("supersededById") REFERENCES "BuyDecision"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "EventMatch" ADD CONSTRAINT "EventMatch_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "EventMatch" ADD CONSTRAINT "EventMatch_keptId_fkey" FOREIGN KEY ("keptId") REFERENCES "Event"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "EventMatch" ADD CONSTRAINT "EventMatch_otherId_fkey" FOREIGN KEY ("otherId") REFERENCES "Event"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Whatever ends a match (a person, or the end of a record that came with a file), what was set aside for it counts again.
CREATE FUNCTION "event_match_ended"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "Event" SET "setAside" = NULL WHERE "id" = OLD."otherId" AND OLD."verdict" = 'same';
  RETURN NULL;
END $$;
CREATE TRIGGER "EventMatch_ended" AFTER DELETE ON "EventMatch" FOR EACH ROW EXECUTE FUNCTION "event_match_ended"();
