-- How sure the place of a line by loss is, drawn with the evaluation.
ALTER TABLE "EvaluatedLine" ADD COLUMN "place" JSONB;
