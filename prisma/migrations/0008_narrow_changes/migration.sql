-- What was computed is computed again; its tables change shape.
DELETE FROM "Evaluation";
DROP TABLE "EvaluatedLine";
DROP TABLE "EvaluatedPool";

ALTER TABLE "Evaluation" ADD COLUMN "staleSince" TIMESTAMPTZ(6), ADD COLUMN "rowsId" UUID NOT NULL;
CREATE INDEX "Evaluation_rowsId_idx" ON "Evaluation"("rowsId");
ALTER TABLE "Evaluation" ADD CONSTRAINT "Evaluation_rowsId_fkey"
  FOREIGN KEY ("rowsId") REFERENCES "Evaluation"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "LineRow" (
    "rowsId" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "fromVersion" BIGINT NOT NULL,
    "untilVersion" BIGINT NOT NULL DEFAULT 9223372036854775807,
    "rankByLoss" INTEGER,
    "rankByScore" INTEGER NOT NULL,
    "result" JSONB NOT NULL,
    "place" JSONB,
    CONSTRAINT "LineRow_pkey" PRIMARY KEY ("rowsId", "lineId", "fromVersion")
);
CREATE INDEX "LineRow_rowsId_untilVersion_idx" ON "LineRow"("rowsId", "untilVersion");
ALTER TABLE "LineRow" ADD CONSTRAINT "LineRow_rowsId_fkey"
  FOREIGN KEY ("rowsId") REFERENCES "Evaluation"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "LineRow" ADD CONSTRAINT "LineRow_lineId_fkey"
  FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "PoolRow" (
    "rowsId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "fromVersion" BIGINT NOT NULL,
    "untilVersion" BIGINT NOT NULL DEFAULT 9223372036854775807,
    "result" JSONB NOT NULL,
    "noSpareByMonth" DOUBLE PRECISION[],
    CONSTRAINT "PoolRow_pkey" PRIMARY KEY ("rowsId", "partId", "fromVersion")
);
CREATE INDEX "PoolRow_rowsId_untilVersion_idx" ON "PoolRow"("rowsId", "untilVersion");
ALTER TABLE "PoolRow" ADD CONSTRAINT "PoolRow_rowsId_fkey"
  FOREIGN KEY ("rowsId") REFERENCES "Evaluation"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "PoolRow" ADD CONSTRAINT "PoolRow_partId_fkey"
  FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE VIEW "EvaluatedLine" AS
  SELECT e."id" AS "evaluationId", r."lineId", r."rankByLoss", r."rankByScore", r."result", r."place"
  FROM "Evaluation" e
  JOIN "LineRow" r ON r."rowsId" = e."rowsId"
    AND r."fromVersion" <= e."dataVersion" AND r."untilVersion" > e."dataVersion";

CREATE VIEW "EvaluatedPool" AS
  SELECT e."id" AS "evaluationId", r."partId", r."result", r."noSpareByMonth"
  FROM "Evaluation" e
  JOIN "PoolRow" r ON r."rowsId" = e."rowsId"
    AND r."fromVersion" <= e."dataVersion" AND r."untilVersion" > e."dataVersion";

CREATE TABLE "NarrowChange" (
    "version" BIGINT NOT NULL,
    "partIds" UUID[],
    "changedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "NarrowChange_pkey" PRIMARY KEY ("version")
);
