-- What the search looks things up by: upper case, without accents, dashes and spaces.

CREATE EXTENSION IF NOT EXISTS pg_trgm;

CREATE FUNCTION "searchKey"("value" text) RETURNS text
  LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE
  RETURN upper(regexp_replace(normalize("value", NFKD), '[^[:alnum:]]+', '', 'g'));

CREATE INDEX "Part_number_search" ON "Part" USING gin ("searchKey"("number") gin_trgm_ops);
CREATE INDEX "PartAlias_alias_search" ON "PartAlias" USING gin ("searchKey"("alias") gin_trgm_ops);
CREATE INDEX "Unit_serial_search" ON "Unit" USING gin ("searchKey"("serial") gin_trgm_ops);
CREATE INDEX "Position_designation_search" ON "Position" USING gin ("searchKey"("designation") gin_trgm_ops);
