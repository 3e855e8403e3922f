-- What the reading of a file made ready, in the words of COPY, so that loading need not read the file again. It is
-- made anew by the next reading, so a crash of the database may empty it.
CREATE UNLOGGED TABLE "ImportPrepared" (
    "batchId" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "rows" INTEGER NOT NULL,
    "fields" TEXT NOT NULL,
    "lines" TEXT NOT NULL,
    "steps" TEXT NOT NULL,

    CONSTRAINT "ImportPrepared_pkey" PRIMARY KEY ("batchId","place")
);
ALTER TABLE "ImportPrepared" ADD CONSTRAINT "ImportPrepared_batchId_fkey"
    FOREIGN KEY ("batchId") REFERENCES "ImportBatch"("id") ON DELETE CASCADE ON UPDATE CASCADE;
