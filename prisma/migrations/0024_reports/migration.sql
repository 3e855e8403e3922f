CREATE TYPE "ReportKind" AS ENUM ('monthly', 'weekly');
CREATE TYPE "ReportForm" AS ENUM ('pdf_a4', 'pdf_letter', 'pptx', 'xlsx');

CREATE TABLE "ReportIssue" (
    "id" UUID NOT NULL,
    "kind" "ReportKind" NOT NULL,
    "siteId" UUID,
    "period" TEXT NOT NULL,
    "asOf" DATE NOT NULL,
    "dataVersion" BIGINT NOT NULL,
    "engine" TEXT NOT NULL,
    "assumptions" TEXT NOT NULL,
    "seed" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "issuedBy" TEXT NOT NULL,
    "issuedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "slot" TEXT,
    CONSTRAINT "ReportIssue_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "ReportIssue_period" CHECK ("period" ~ CASE "kind" WHEN 'monthly' THEN '^\d{4}-\d{2}$' ELSE '^\d{4}-W\d{2}$' END)
);
CREATE UNIQUE INDEX "ReportIssue_slot_key" ON "ReportIssue"("slot");
CREATE INDEX "ReportIssue_siteId_kind_period_idx" ON "ReportIssue"("siteId", "kind", "period");
ALTER TABLE "ReportIssue" ADD CONSTRAINT "ReportIssue_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "ReportFile" (
    "issueId" UUID NOT NULL,
    "form" "ReportForm" NOT NULL,
    "hash" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    CONSTRAINT "ReportFile_pkey" PRIMARY KEY ("issueId", "form"),
    CONSTRAINT "ReportFile_hash" CHECK ("hash" = encode(sha256("bytes"), 'hex'))
);
ALTER TABLE "ReportFile" ADD CONSTRAINT "ReportFile_issueId_fkey" FOREIGN KEY ("issueId") REFERENCES "ReportIssue"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TABLE "ReportWish" (
    "id" UUID NOT NULL,
    "userId" TEXT NOT NULL,
    "kind" "ReportKind" NOT NULL,
    "siteId" UUID,
    "form" "ReportForm" NOT NULL,
    CONSTRAINT "ReportWish_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "ReportWish_week_of_a_site" CHECK ("kind" <> 'weekly' OR "siteId" IS NOT NULL)
);
CREATE UNIQUE INDEX "ReportWish_userId_kind_siteId_key" ON "ReportWish"("userId", "kind", "siteId");
CREATE INDEX "ReportWish_siteId_idx" ON "ReportWish"("siteId");
ALTER TABLE "ReportWish" ADD CONSTRAINT "ReportWish_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ReportWish" ADD CONSTRAINT "ReportWish_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "ReportMail" (
    "id" UUID NOT NULL,
    "userId" TEXT NOT NULL,
    "issueId" UUID NOT NULL,
    "form" "ReportForm" NOT NULL,
    "askedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "problem" TEXT,
    "sentAt" TIMESTAMPTZ(6),
    "file" TEXT,
    CONSTRAINT "ReportMail_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "ReportMail_userId_issueId_key" ON "ReportMail"("userId", "issueId");
CREATE INDEX "ReportMail_issueId_idx" ON "ReportMail"("issueId");
ALTER TABLE "ReportMail" ADD CONSTRAINT "ReportMail_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ReportMail" ADD CONSTRAINT "ReportMail_issueId_fkey" FOREIGN KEY ("issueId") REFERENCES "ReportIssue"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What was given out stays as it stood, whoever writes.
CREATE FUNCTION refuse_change_of_report() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'a report that was given out stays as it stood';
END $$;
CREATE TRIGGER "ReportIssue_stays" BEFORE UPDATE OR DELETE ON "ReportIssue" FOR EACH ROW EXECUTE FUNCTION refuse_change_of_report();
CREATE TRIGGER "ReportFile_stays" BEFORE UPDATE OR DELETE ON "ReportFile" FOR EACH ROW EXECUTE FUNCTION refuse_change_of_report();
