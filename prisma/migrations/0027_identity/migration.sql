CREATE TYPE "WordKind" AS ENUM ('line', 'machine', 'choice', 'text');

CREATE TYPE "UnmatchedKind" AS ENUM ('part', 'line', 'machine', 'choice', 'text');

CREATE TYPE "NumberVerdictKind" AS ENUM ('other', 'later');

ALTER TABLE "ImportBatch" ADD COLUMN     "sourceId" UUID;

ALTER TABLE "Part" ADD COLUMN     "mergedIntoId" UUID;

ALTER TABLE "PartAlias" ADD COLUMN     "decidedBy" TEXT,
ADD COLUMN     "decidedOn" DATE,
ADD COLUMN     "reason" TEXT;

CREATE TABLE "ImportSource" (
    "id" UUID NOT NULL,
    "siteId" UUID,
    "name" TEXT NOT NULL,

    CONSTRAINT "ImportSource_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "SourceReading" (
    "id" UUID NOT NULL,
    "sourceId" UUID NOT NULL,
    "register" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "headers" TEXT NOT NULL,
    "mapping" JSONB NOT NULL,
    "answers" JSONB NOT NULL,
    "changedBy" TEXT NOT NULL,
    "changedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SourceReading_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "LearnedWord" (
    "id" UUID NOT NULL,
    "sourceId" UUID NOT NULL,
    "kind" "WordKind" NOT NULL,
    "within" TEXT NOT NULL DEFAULT '',
    "written" TEXT NOT NULL,
    "folded" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "decidedBy" TEXT NOT NULL,
    "decidedOn" DATE NOT NULL,

    CONSTRAINT "LearnedWord_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "UnmatchedName" (
    "id" UUID NOT NULL,
    "batchId" UUID NOT NULL,
    "kind" "UnmatchedKind" NOT NULL,
    "within" TEXT NOT NULL DEFAULT '',
    "written" TEXT NOT NULL,
    "folded" TEXT NOT NULL,
    "siteCode" TEXT NOT NULL DEFAULT '',
    "detail" TEXT NOT NULL DEFAULT '',
    "rows" INTEGER NOT NULL,
    "firstRow" INTEGER NOT NULL,

    CONSTRAINT "UnmatchedName_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "NumberVerdict" (
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "written" TEXT NOT NULL,
    "maker" TEXT NOT NULL DEFAULT '',
    "partId" UUID,
    "verdict" "NumberVerdictKind" NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "decidedBy" TEXT NOT NULL,
    "decidedOn" DATE NOT NULL,

    CONSTRAINT "NumberVerdict_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "PartMerge" (
    "id" UUID NOT NULL,
    "keptId" UUID NOT NULL,
    "otherId" UUID NOT NULL,
    "steps" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "decidedBy" TEXT NOT NULL,
    "decidedOn" DATE NOT NULL,
    "undoneBy" TEXT,
    "undoneOn" DATE,
    "stayed" TEXT[],

    CONSTRAINT "PartMerge_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "ImportSource_siteId_idx" ON "ImportSource"("siteId");
CREATE UNIQUE INDEX "ImportSource_name_siteId_key" ON "ImportSource"("name", "siteId");
CREATE INDEX "SourceReading_register_idx" ON "SourceReading"("register");
CREATE UNIQUE INDEX "SourceReading_sourceId_register_version_key" ON "SourceReading"("sourceId", "register", "version");
CREATE UNIQUE INDEX "LearnedWord_sourceId_kind_within_folded_key" ON "LearnedWord"("sourceId", "kind", "within", "folded");
CREATE INDEX "UnmatchedName_kind_folded_idx" ON "UnmatchedName"("kind", "folded");
CREATE UNIQUE INDEX "UnmatchedName_batchId_kind_siteCode_within_folded_key" ON "UnmatchedName"("batchId", "kind", "siteCode", "within", "folded");
CREATE INDEX "NumberVerdict_partId_idx" ON "NumberVerdict"("partId");
CREATE UNIQUE INDEX "NumberVerdict_key_maker_partId_key" ON "NumberVerdict"("key", "maker", "partId");
CREATE INDEX "PartMerge_keptId_idx" ON "PartMerge"("keptId");
CREATE INDEX "PartMerge_otherId_idx" ON "PartMerge"("otherId");
CREATE INDEX "ImportBatch_sourceId_idx" ON "ImportBatch"("sourceId");
CREATE INDEX "Part_mergedIntoId_idx" ON "Part"("mergedIntoId");
ALTER TABLE "ImportSource" ADD CONSTRAINT "ImportSource_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "SourceReading" ADD CONSTRAINT "SourceReading_sourceId_fkey" FOREIGN KEY ("sourceId") REFERENCES "ImportSource"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "LearnedWord" ADD CONSTRAINT "LearnedWord_sourceId_fkey" FOREIGN KEY ("sourceId") REFERENCES "ImportSource"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "UnmatchedName" ADD CONSTRAINT "UnmatchedName_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "ImportBatch"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "NumberVerdict" ADD CONSTRAINT "NumberVerdict_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "PartMerge" ADD CONSTRAINT "PartMerge_keptId_fkey" FOREIGN KEY ("keptId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "PartMerge" ADD CONSTRAINT "PartMerge_otherId_fkey" FOREIGN KEY ("otherId") REFERENCES "Part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Part" ADD CONSTRAINT "Part_mergedIntoId_fkey" FOREIGN KEY ("mergedIntoId") REFERENCES "Part"("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "ImportBatch" ADD CONSTRAINT "ImportBatch_sourceId_fkey" FOREIGN KEY ("sourceId") REFERENCES "ImportSource"("id") ON DELETE SET NULL ON UPDATE CASCADE;
