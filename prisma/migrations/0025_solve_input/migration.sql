-- What searches were made from, so that a search can be made again from exactly that.
CREATE TABLE "SolveInput" (
    "hash" TEXT NOT NULL,
    "packed" BYTEA NOT NULL,
    "keptAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SolveInput_pkey" PRIMARY KEY ("hash")
);
