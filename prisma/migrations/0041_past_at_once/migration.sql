-- Former rows are kept once a statement and not once a row: by a function of each table's own, made from the catalogue,
-- whose statements are planned once a session.
CREATE OR REPLACE FUNCTION keep_past() RETURNS void LANGUAGE plpgsql AS $do$
DECLARE
  one record;
  key text[];
  own text;
BEGIN
  FOR one IN
    SELECT c.oid::regclass AS "of", c.relname AS "name" FROM pg_class c
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relname <> ALL(kept_without_past())
      AND key_columns(c.oid) IS NOT NULL
      AND NOT EXISTS (SELECT FROM pg_trigger t WHERE t.tgrelid = c.oid AND t.tgname = 'keep_births')
  LOOP
    key := key_columns(one."of");
    own := format('public.%I', 'keep_past_of_' || one."name");
    -- Joined in full, since a full join is never planned as a loop in a loop, whatever the first statement touched.
    EXECUTE format($make$
      CREATE OR REPLACE FUNCTION %1$s() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER
        SET search_path = public, pg_temp AS $$
      BEGIN
        -- A copy of another installation brings its own former rows.
        IF is_taking_in() THEN
          RETURN NULL;
        END IF;
        IF TG_OP = 'INSERT' THEN
          INSERT INTO "RowBirth" ("table", "keys")
            SELECT %2$L, array_agg(%3$s) FROM later HAVING count(*) > 0;
        ELSIF TG_OP = 'DELETE' THEN
          INSERT INTO "RowPast" ("table", "key", "row") SELECT %2$L, %4$s, to_jsonb(former) FROM former;
        ELSE
          WITH changed AS MATERIALIZED (
            SELECT %4$s AS was, %3$s AS became, CASE WHEN former.%5$I IS NOT NULL THEN to_jsonb(former) END AS "row"
            FROM former FULL JOIN later ON %6$s
            WHERE former.%5$I IS NULL OR later.%5$I IS NULL OR former.* *<> later.*
          ), born AS (
            INSERT INTO "RowBirth" ("table", "keys")
              SELECT %2$L, array_agg(became) FROM changed WHERE was IS NULL HAVING count(*) > 0
          )
          INSERT INTO "RowPast" ("table", "key", "row") SELECT %2$L, was, "row" FROM changed WHERE was IS NOT NULL;
        END IF;
        RETURN NULL;
      END $$ $make$,
      own, one."name", key_sql(one."of", 'later'), key_sql(one."of", 'former'), key[1],
      (SELECT string_agg(format('former.%1$I = later.%1$I', c), ' AND ') FROM unnest(key) c));
    EXECUTE format('CREATE TRIGGER keep_births AFTER INSERT ON %s REFERENCING NEW TABLE AS later
      FOR EACH STATEMENT EXECUTE FUNCTION %s()', one."of", own);
    EXECUTE format('CREATE TRIGGER keep_changed AFTER UPDATE ON %s REFERENCING OLD TABLE AS former NEW TABLE AS later
      FOR EACH STATEMENT EXECUTE FUNCTION %s()', one."of", own);
    EXECUTE format('CREATE TRIGGER keep_removed AFTER DELETE ON %s REFERENCING OLD TABLE AS former
      FOR EACH STATEMENT EXECUTE FUNCTION %s()', one."of", own);
  END LOOP;
END $do$;

DO $$
DECLARE
  one record;
BEGIN
  FOR one IN SELECT tgrelid::regclass AS "of", tgname AS "name" FROM pg_trigger
    WHERE tgname IN ('keep_births', 'keep_changed', 'keep_removed')
  LOOP
    EXECUTE format('DROP TRIGGER %I ON %s', one."name", one."of");
  END LOOP;
END $$;
DROP FUNCTION keep_births();
DROP FUNCTION keep_former();
SELECT keep_past();

-- What a row that is gone belonged to; events are found by the entries of those taken back.
CREATE INDEX "RowPast_lineId_idx" ON "RowPast" (("row"->>'lineId')) WHERE "table" <> 'Event' AND "row"->>'lineId' IS NOT NULL;
CREATE INDEX "RowPast_machineId_idx" ON "RowPast" (("row"->>'machineId')) WHERE "table" <> 'Event' AND "row"->>'machineId' IS NOT NULL;
CREATE INDEX "RowPast_partId_idx" ON "RowPast" (("row"->>'partId')) WHERE "table" <> 'Event' AND "row"->>'partId' IS NOT NULL;
CREATE INDEX "RowPast_lotId_idx" ON "RowPast" (("row"->>'lotId')) WHERE "table" <> 'Event' AND "row"->>'lotId' IS NOT NULL;
CREATE INDEX "RowPast_axisId_idx" ON "RowPast" (("row"->>'axisId')) WHERE "table" <> 'Event' AND "row"->>'axisId' IS NOT NULL;
CREATE INDEX "RowPast_planId_idx" ON "RowPast" (("row"->>'planId')) WHERE "table" <> 'Event' AND "row"->>'planId' IS NOT NULL;
CREATE INDEX "RowPast_projectId_idx" ON "RowPast" (("row"->>'projectId')) WHERE "table" <> 'Event' AND "row"->>'projectId' IS NOT NULL;

-- The audit by thing, kind of deed and site, each in the order of time.
CREATE INDEX "AuditEntry_entityId_idx" ON "AuditEntry"("entityId");
CREATE INDEX "AuditEntry_area_at_idx" ON "AuditEntry"((split_part("deed", ':', 1)), "at");
CREATE INDEX "AuditEntry_siteId_at_idx" ON "AuditEntry"("siteId", "at");
