CREATE TYPE "AssumptionKind" AS ENUM ('careful', 'likely', 'bold', 'own');

CREATE TABLE "AssumptionSet" (
    "id" UUID NOT NULL,
    "kind" "AssumptionKind" NOT NULL,
    "version" INTEGER NOT NULL,
    "values" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "changedAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "changedBy" TEXT NOT NULL,

    CONSTRAINT "AssumptionSet_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "AssumptionSet_kind_version_key" ON "AssumptionSet"("kind", "version");
ALTER TABLE "AssumptionSet" ADD CONSTRAINT "AssumptionSet_version_from_one" CHECK ("version" >= 1);

-- A version that was written stays as it was written.
CREATE FUNCTION "AssumptionSet_stays"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'A version of the assumptions is never changed or removed; write a new one';
END $$;
CREATE TRIGGER "AssumptionSet_append_only" BEFORE UPDATE OR DELETE ON "AssumptionSet"
  FOR EACH ROW EXECUTE FUNCTION "AssumptionSet_stays"();

-- Every evaluation before this one was computed with the likely values.
ALTER TABLE "Evaluation" ADD COLUMN "assumptionKind" "AssumptionKind" NOT NULL DEFAULT 'likely';
ALTER TABLE "Evaluation" ADD COLUMN "assumptionVersion" INTEGER NOT NULL DEFAULT 1;
ALTER TABLE "Evaluation" ALTER COLUMN "assumptionKind" DROP DEFAULT;
ALTER TABLE "Evaluation" ALTER COLUMN "assumptionVersion" DROP DEFAULT;
DROP INDEX "Evaluation_asOf_dataVersion_engine_key";
CREATE UNIQUE INDEX "Evaluation_asOf_dataVersion_engine_assumptionKind_assumptio_key" ON "Evaluation"("asOf", "dataVersion", "engine", "assumptionKind", "assumptionVersion");
