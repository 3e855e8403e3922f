-- What the evaluation of the group read on a day, kept to be computed again and compared.

CREATE TABLE "Snapshot" (
    "id" UUID NOT NULL,
    "asOf" DATE NOT NULL,
    "engine" TEXT NOT NULL,
    "dataVersion" BIGINT NOT NULL,
    "input" BYTEA NOT NULL,
    "assumptions" JSONB NOT NULL,
    "resultHash" TEXT NOT NULL,
    "takenAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "takenBy" TEXT,

    CONSTRAINT "Snapshot_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "Snapshot_asOf_engine_key" ON "Snapshot"("asOf", "engine");
