CREATE TYPE "CopyDirection" AS ENUM ('out', 'in');

CREATE TABLE "WholeCopy" (
    "id" UUID NOT NULL,
    "direction" "CopyDirection" NOT NULL,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "by" TEXT,
    "hash" TEXT NOT NULL,
    "withSecrets" BOOLEAN NOT NULL,
    "rows" BIGINT NOT NULL,
    CONSTRAINT "WholeCopy_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "WholeCopy_hash" CHECK ("hash" ~ '^[0-9a-f]{64}$')
);
CREATE INDEX "WholeCopy_at_idx" ON "WholeCopy"("at");
