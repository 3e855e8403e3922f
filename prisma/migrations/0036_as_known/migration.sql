-- Former rows of every table of records, kept by triggers, and the views that show the tables as they stood.
CREATE TABLE "KeptSince" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "KeptSince_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "RowPast" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "table" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "row" JSONB NOT NULL,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "wroteAt" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),

    CONSTRAINT "RowPast_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "RowBirth" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "table" TEXT NOT NULL,
    "keys" TEXT[],
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "wroteAt" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),

    CONSTRAINT "RowBirth_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "PastEvaluation" (
    "id" UUID NOT NULL,
    "asOf" DATE NOT NULL,
    "basis" TEXT NOT NULL,
    "dataVersion" BIGINT NOT NULL,
    "engine" TEXT NOT NULL,
    "assumptions" JSONB NOT NULL,
    "assumptionKind" "AssumptionKind" NOT NULL,
    "assumptionVersion" INTEGER NOT NULL,
    "takenAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "totals" JSONB,

    CONSTRAINT "PastEvaluation_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "PastLine" (
    "evaluationId" UUID NOT NULL,
    "lineId" UUID NOT NULL,
    "rankByLoss" INTEGER,
    "rankByScore" INTEGER NOT NULL,
    "result" JSONB NOT NULL,
    "place" JSONB,

    CONSTRAINT "PastLine_pkey" PRIMARY KEY ("evaluationId","lineId")
);

CREATE TABLE "PastPool" (
    "evaluationId" UUID NOT NULL,
    "partId" UUID NOT NULL,
    "result" JSONB NOT NULL,
    "noSpareByMonth" DOUBLE PRECISION[],

    CONSTRAINT "PastPool_pkey" PRIMARY KEY ("evaluationId","partId")
);

CREATE INDEX "RowPast_table_at_idx" ON "RowPast"("table", "at");
CREATE INDEX "RowPast_at_idx" ON "RowPast"("at");
CREATE INDEX "RowBirth_table_at_idx" ON "RowBirth"("table", "at");
CREATE INDEX "RowBirth_at_idx" ON "RowBirth"("at");
CREATE UNIQUE INDEX "PastEvaluation_asOf_basis_engine_key" ON "PastEvaluation"("asOf", "basis", "engine");
ALTER TABLE "PastLine" ADD CONSTRAINT "PastLine_evaluationId_fkey" FOREIGN KEY ("evaluationId") REFERENCES "PastEvaluation"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "PastPool" ADD CONSTRAINT "PastPool_evaluationId_fkey" FOREIGN KEY ("evaluationId") REFERENCES "PastEvaluation"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Tables of which no former rows are kept: what people get in with, what is computed again, files, queues, and what
-- is never changed once it was written.
CREATE FUNCTION kept_without_past() RETURNS text[] LANGUAGE sql IMMUTABLE AS $$
  SELECT ARRAY[
    '_prisma_migrations', 'KeptSince', 'RowPast', 'RowBirth', 'PastEvaluation', 'PastLine', 'PastPool',
    'User', 'Grant', 'Session', 'Account', 'Verification', 'TwoFactor', 'RateLimit', 'WrongPassword', 'Invitation', 'AccountInvitation',
    'AccessKey', 'CalendarFeed', 'Webhook', 'WebhookDelivery', 'KeptAnswer',
    'Evaluation', 'LineRow', 'PoolRow', 'NarrowChange', 'SolveRun',
    'ImportFile', 'ImportPiece', 'ImportBatch', 'ImportProblem', 'ImportDifference', 'ImportMention', 'ImportPrepared',
    'ImportChange', 'AuditEntry', 'WholeCopy', 'DigestMail', 'ReportMail', 'ReportFile', 'Snapshot'
  ]
$$;

CREATE FUNCTION keep_births() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  -- A copy of another installation brings its own former rows.
  IF is_taking_in() THEN
    RETURN NULL;
  END IF;
  -- The first argument is SQL of the key, made by keep_past() from the catalogue.
  EXECUTE format(
    'INSERT INTO "RowBirth" ("table", "keys") SELECT $1, array_agg(%s) FROM added HAVING count(*) > 0', TG_ARGV[0])
  USING TG_TABLE_NAME;
  RETURN NULL;
END $$;

CREATE FUNCTION keep_former() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  former jsonb := to_jsonb(OLD);
  former_key text;
  now_key text;
BEGIN
  IF is_taking_in() THEN
    RETURN NULL;
  END IF;
  SELECT string_agg(former ->> c, '|' ORDER BY i) INTO former_key FROM unnest(TG_ARGV) WITH ORDINALITY AS k(c, i);
  INSERT INTO "RowPast" ("table", "key", "row") VALUES (TG_TABLE_NAME, former_key, former);
  IF TG_OP = 'UPDATE' THEN
    SELECT string_agg(to_jsonb(NEW) ->> c, '|' ORDER BY i) INTO now_key FROM unnest(TG_ARGV) WITH ORDINALITY AS k(c, i);
    IF now_key <> former_key THEN
      INSERT INTO "RowBirth" ("table", "keys") VALUES (TG_TABLE_NAME, ARRAY[now_key]);
    END IF;
  END IF;
  RETURN NULL;
END $$;

-- Columns of the primary key of a table, in their order.
CREATE FUNCTION key_columns(of_table regclass) RETURNS text[] LANGUAGE sql STABLE AS $$
  SELECT array_agg(a.attname::text ORDER BY k.place) FROM pg_index i
  CROSS JOIN LATERAL unnest(i.indkey) WITH ORDINALITY AS k(attnum, place)
  JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = k.attnum
  WHERE i.indrelid = of_table AND i.indisprimary
$$;

-- SQL of the key of a row as text, as keep_former() writes it.
CREATE FUNCTION key_sql(of_table regclass, called text) RETURNS text LANGUAGE sql STABLE AS $$
  SELECT string_agg(format(
    CASE WHEN a.atttypid IN ('uuid'::regtype, 'text'::regtype, 'int4'::regtype, 'int8'::regtype)
      THEN '%I.%I::text' ELSE '(to_jsonb(%I.%I) #>> ''{}'')' END, called, c), ' || ''|'' || ' ORDER BY i)
  FROM unnest(key_columns(of_table)) WITH ORDINALITY AS k(c, i)
  JOIN pg_attribute a ON a.attrelid = of_table AND a.attname = c
$$;

-- Sets the triggers on every table of records that has none yet; called whenever migrations were applied.
CREATE FUNCTION keep_past() RETURNS void LANGUAGE plpgsql AS $$
DECLARE
  one regclass;
  columns text;
BEGIN
  FOR one IN
    SELECT c.oid FROM pg_class c
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relname <> ALL(kept_without_past())
      AND NOT EXISTS (SELECT FROM pg_trigger t WHERE t.tgrelid = c.oid AND t.tgname = 'keep_births')
  LOOP
    SELECT string_agg(quote_literal(c), ', ') INTO columns FROM unnest(key_columns(one)) c;
    EXECUTE format('CREATE TRIGGER keep_births AFTER INSERT ON %s REFERENCING NEW TABLE AS added
      FOR EACH STATEMENT EXECUTE FUNCTION keep_births(%L)', one, key_sql(one, 'added'));
    EXECUTE format('CREATE TRIGGER keep_changed AFTER UPDATE ON %s
      FOR EACH ROW WHEN (OLD.* *<> NEW.*) EXECUTE FUNCTION keep_former(%s)', one, columns);
    EXECUTE format('CREATE TRIGGER keep_removed AFTER DELETE ON %s
      FOR EACH ROW EXECUTE FUNCTION keep_former(%s)', one, columns);
  END LOOP;
END $$;

-- The instant this connection looks from: what was recorded later is not there.
CREATE FUNCTION known_at() RETURNS timestamptz LANGUAGE sql STABLE AS $$
  SELECT current_setting('ebbline.known_at')::timestamptz
$$;

-- Keys of rows that were added, changed or removed since.
CREATE FUNCTION touched_since(of_table text) RETURNS TABLE ("key" text) LANGUAGE sql STABLE AS $$
  SELECT p."key" FROM public."RowPast" p WHERE p."table" = of_table AND p."at" > public.known_at()
  UNION
  SELECT unnest(b."keys") FROM public."RowBirth" b WHERE b."table" = of_table AND b."at" > public.known_at()
$$;

-- Those rows as they stood, without those that were not there.
CREATE FUNCTION former_rows(of_table text) RETURNS TABLE ("row" jsonb) LANGUAGE sql STABLE AS $$
  SELECT f."row" FROM (
    SELECT DISTINCT ON (p."key") p."key", p."row", p."wroteAt" FROM public."RowPast" p
    WHERE p."table" = of_table AND p."at" > public.known_at()
    ORDER BY p."key", p."wroteAt"
  ) f
  WHERE NOT EXISTS (
    SELECT FROM public."RowBirth" b CROSS JOIN LATERAL unnest(b."keys") AS added("key")
    WHERE b."table" = of_table AND b."at" > public.known_at() AND b."wroteAt" < f."wroteAt" AND added."key" = f."key"
  )
$$;

-- Lets an account read the schema `known`.
CREATE FUNCTION open_known(account text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('GRANT USAGE ON SCHEMA known TO %I', account);
  EXECUTE format('GRANT SELECT ON ALL TABLES IN SCHEMA known TO %I', account);
END $$;
REVOKE EXECUTE ON FUNCTION open_known(text) FROM PUBLIC;

-- Makes the schema `known`: under the name of each table what it held at known_at(). Made when somebody looks back
-- and the tables are others than those it was made for, and dropped before tables are migrated.
CREATE FUNCTION build_known() RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
DECLARE
  state text;
  one record;
BEGIN
  PERFORM pg_advisory_xact_lock(72707371);
  SELECT md5(string_agg(a.attrelid::text || ' ' || a.attnum || ' ' || a.attname || ' ' || a.atttypid || ' ' || a.atttypmod,
      ',' ORDER BY a.attrelid, a.attnum)) INTO state
    FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'v') AND a.attnum > 0 AND NOT a.attisdropped;
  IF obj_description(to_regnamespace('known'), 'pg_namespace') IS NOT DISTINCT FROM state THEN
    PERFORM open_known(session_user::text);
    RETURN;
  END IF;
  DROP SCHEMA IF EXISTS known CASCADE;
  CREATE SCHEMA known;
  FOR one IN SELECT c.oid::regclass AS "of", c.relname AS "name", c.relname = ANY(kept_without_past()) AS "plain"
    FROM pg_class c WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'
      AND c.relname NOT IN ('Evaluation', 'LineRow', 'PoolRow')
  LOOP
    IF one."plain" THEN
      EXECUTE format('CREATE VIEW known.%I AS SELECT * FROM public.%I', one."name", one."name");
    ELSE
      EXECUTE format('CREATE VIEW known.%I AS
        SELECT kept.* FROM public.%I kept WHERE NOT EXISTS (SELECT FROM public.touched_since(%L) t WHERE t."key" = %s)
        UNION ALL
        SELECT r.* FROM public.former_rows(%L) f CROSS JOIN LATERAL jsonb_populate_record(NULL::public.%I, f."row") r',
        one."name", one."name", one."name", key_sql(one."of", 'kept'), one."name", one."name");
    END IF;
  END LOOP;
  CREATE VIEW known."Evaluation" AS
    SELECT e.*, NULL::timestamptz AS "staleSince", e."id" AS "rowsId" FROM public."PastEvaluation" e;
  CREATE VIEW known."EvaluatedLine" AS SELECT * FROM public."PastLine";
  CREATE VIEW known."EvaluatedPool" AS SELECT * FROM public."PastPool";
  EXECUTE format('COMMENT ON SCHEMA known IS %L', state);
  PERFORM open_known(session_user::text);
END $$;

-- A copy that is taken in replaces the little that an unused installation has recorded of itself.
CREATE FUNCTION forget_unused_past() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  DELETE FROM "RowPast";
  DELETE FROM "RowBirth";
  DELETE FROM "KeptSince";
  RETURN NULL;
END $$;
CREATE TRIGGER forget_unused_past AFTER INSERT ON guard.taking_in
  FOR EACH STATEMENT EXECUTE FUNCTION forget_unused_past();

-- Why somebody did it, in their words, and who did what in the order of time.
ALTER TABLE "AuditEntry" ADD COLUMN "why" TEXT;
CREATE INDEX "AuditEntry_userId_at_idx" ON "AuditEntry"("userId", "at");

-- Rows that are there already have no past; from now on they do.
INSERT INTO "KeptSince" ("at") SELECT now() WHERE EXISTS (SELECT FROM "Site");

SELECT keep_past();
