-- Files as they were handed in, in pieces, so that none has to be held whole and every process reads them.
CREATE TABLE "ImportFile" (
    "id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "tellingPiece" INTEGER NOT NULL DEFAULT 0,
    "keptAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ImportFile_pkey" PRIMARY KEY ("id")
);
CREATE TABLE "ImportPiece" (
    "fileId" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "ImportPiece_pkey" PRIMARY KEY ("fileId","place")
);
-- What comes in is rarely shrunk by the database's own packing, and unpacking costs at each reading.
ALTER TABLE "ImportPiece" ALTER COLUMN "bytes" SET STORAGE EXTERNAL;

INSERT INTO "ImportFile" ("id", "hash", "size", "keptAt")
    SELECT "id", "fileHash", octet_length("fileBytes"), "createdAt" FROM "ImportBatch";
INSERT INTO "ImportPiece" ("fileId", "place", "bytes")
    SELECT "id", place, substring("fileBytes" FROM place * 1048576 + 1 FOR 1048576)
    FROM "ImportBatch", generate_series(0, (octet_length("fileBytes") - 1) / 1048576) place
    WHERE octet_length("fileBytes") > 0;

CREATE TYPE "ImportWork" AS ENUM ('idle', 'reading', 'read', 'loading', 'failed', 'stopped');

ALTER TABLE "ImportBatch"
    ADD COLUMN "fileId" UUID,
    ADD COLUMN "reading" JSONB NOT NULL DEFAULT '{}',
    ADD COLUMN "headers" TEXT NOT NULL DEFAULT '',
    ADD COLUMN "onlyRows" INTEGER[],
    ADD COLUMN "restOfId" UUID,
    ADD COLUMN "leftOut" INTEGER[],
    ADD COLUMN "work" "ImportWork" NOT NULL DEFAULT 'idle',
    ADD COLUMN "workId" UUID,
    ADD COLUMN "workNote" TEXT,
    ADD COLUMN "workStartedAt" TIMESTAMPTZ(6),
    ADD COLUMN "beatAt" TIMESTAMPTZ(6),
    ADD COLUMN "rowsRead" INTEGER NOT NULL DEFAULT 0,
    ADD COLUMN "bytesRead" INTEGER NOT NULL DEFAULT 0,
    ADD COLUMN "readFor" TEXT,
    ADD COLUMN "summary" JSONB;
UPDATE "ImportBatch" SET "fileId" = "id";
ALTER TABLE "ImportBatch" ALTER COLUMN "fileId" SET NOT NULL, DROP COLUMN "fileBytes";
CREATE INDEX "ImportBatch_fileId_idx" ON "ImportBatch"("fileId");
CREATE INDEX "ImportBatch_restOfId_idx" ON "ImportBatch"("restOfId");

-- What was found against rows of a file: shown page by page, and kept once the file is loaded.
CREATE TABLE "ImportProblem" (
    "batchId" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "rowNumber" INTEGER NOT NULL,
    "severity" TEXT NOT NULL,
    "waits" BOOLEAN NOT NULL,
    "column" TEXT,
    "field" TEXT,
    "found" TEXT NOT NULL,
    "problem" TEXT NOT NULL,
    "remedy" TEXT NOT NULL,

    CONSTRAINT "ImportProblem_pkey" PRIMARY KEY ("batchId","place"),
    CONSTRAINT "ImportProblem_severity" CHECK ("severity" IN ('error', 'warning'))
);
CREATE INDEX "ImportProblem_batchId_severity_rowNumber_place_idx"
    ON "ImportProblem"("batchId", "severity", "rowNumber", "place");

-- What a file that is not loaded yet would change, a field a line, in words.
CREATE TABLE "ImportDifference" (
    "batchId" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "rowNumber" INTEGER NOT NULL,
    "thing" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "field" TEXT NOT NULL,
    "before" TEXT NOT NULL,
    "after" TEXT NOT NULL,

    CONSTRAINT "ImportDifference_pkey" PRIMARY KEY ("batchId","place")
);

-- The stored things a file speaks of, so that the next file of its kind can tell which it no longer does.
CREATE TABLE "ImportMention" (
    "batchId" UUID NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,

    CONSTRAINT "ImportMention_pkey" PRIMARY KEY ("batchId","entity","entityId")
);

ALTER TABLE "ImportPiece" ADD CONSTRAINT "ImportPiece_fileId_fkey"
    FOREIGN KEY ("fileId") REFERENCES "ImportFile"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ImportBatch" ADD CONSTRAINT "ImportBatch_fileId_fkey"
    FOREIGN KEY ("fileId") REFERENCES "ImportFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ImportBatch" ADD CONSTRAINT "ImportBatch_restOfId_fkey"
    FOREIGN KEY ("restOfId") REFERENCES "ImportBatch"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "ImportProblem" ADD CONSTRAINT "ImportProblem_batchId_fkey"
    FOREIGN KEY ("batchId") REFERENCES "ImportBatch"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ImportDifference" ADD CONSTRAINT "ImportDifference_batchId_fkey"
    FOREIGN KEY ("batchId") REFERENCES "ImportBatch"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "ImportMention" ADD CONSTRAINT "ImportMention_batchId_fkey"
    FOREIGN KEY ("batchId") REFERENCES "ImportBatch"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A step is named by its batch and place; a number of its own would be a third index over every row written.
ALTER TABLE "ImportChange" DROP CONSTRAINT "ImportChange_pkey";
ALTER TABLE "ImportChange" DROP COLUMN "id";
DROP INDEX "ImportChange_batchId_sequence_key";
ALTER TABLE "ImportChange" ADD CONSTRAINT "ImportChange_pkey" PRIMARY KEY ("batchId","sequence");
