-- What was audited stays as it was written, whoever writes; an account that owns no table cannot drop this either.
CREATE FUNCTION refuse_change_of_audit() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'the audit is only added to: entry % stays as it was written', OLD."id";
END $$;

-- Which transaction fills an empty installation from a copy. The schema is open to the owner alone, so nobody else
-- can claim to be doing so; the start of the transaction tells it from one of the same number on another server.
CREATE SCHEMA guard;
CREATE TABLE guard.taking_in ("transaction" xid8 NOT NULL, "startedAt" timestamptz NOT NULL);

CREATE FUNCTION is_taking_in() RETURNS boolean LANGUAGE sql STABLE SECURITY DEFINER
SET search_path = pg_catalog, pg_temp AS $$
    SELECT EXISTS (SELECT FROM guard.taking_in
        WHERE "transaction" = pg_current_xact_id_if_assigned() AND "startedAt" = now())
$$;

-- Nothing was recorded yet: no site, no part, no file, nobody but the person named, and an audit that speaks of
-- nothing but people and settings. What is audited of sites can be removed by nobody, so no installation that was
-- in use becomes unused again.
CREATE FUNCTION is_unused(person text) RETURNS boolean LANGUAGE sql STABLE SECURITY DEFINER
SET search_path = public, pg_temp AS $$
    SELECT NOT (EXISTS (SELECT FROM "Site") OR EXISTS (SELECT FROM "Part") OR EXISTS (SELECT FROM "ImportBatch")
        OR EXISTS (SELECT FROM "User" WHERE "id" IS DISTINCT FROM person)
        OR EXISTS (SELECT FROM "AuditEntry" WHERE "siteId" IS NOT NULL OR "entity" <> ALL (ARRAY['User', 'Invitation',
            'AccessKey', 'Webhook', 'CalendarFeed', 'Digest', 'ReportWish', 'Setting', 'AssumptionSet',
            'CompatibilityRule', 'CurrencyRate', 'MonthRate', 'ScopeNorm', 'EffortNorm', 'CareInterval', 'PlanFigure'])))
$$;

-- Lets this transaction fill an installation that is unused, where its own first audit makes room for that of the
-- copy. Answers whether it may.
CREATE FUNCTION begin_taking_in(person text) RETURNS boolean LANGUAGE plpgsql SECURITY DEFINER
SET search_path = public, pg_temp AS $$
BEGIN
    IF NOT is_unused(person) THEN
        RETURN false;
    END IF;
    DELETE FROM guard.taking_in;
    INSERT INTO guard.taking_in VALUES (pg_current_xact_id(), now());
    DELETE FROM "AuditEntry";
    RETURN true;
END $$;
REVOKE EXECUTE ON FUNCTION begin_taking_in(text) FROM PUBLIC;

CREATE TRIGGER "AuditEntry_stays" BEFORE UPDATE OR DELETE ON "AuditEntry"
    FOR EACH ROW WHEN (NOT is_taking_in()) EXECUTE FUNCTION refuse_change_of_audit();
-- A copy is written through the triggers, since only the owner may disable them.
CREATE OR REPLACE TRIGGER "AssumptionSet_append_only" BEFORE UPDATE OR DELETE ON "AssumptionSet"
    FOR EACH ROW WHEN (NOT is_taking_in()) EXECUTE FUNCTION "AssumptionSet_stays"();
CREATE OR REPLACE TRIGGER "CompatibilityRule_append_only" BEFORE UPDATE OR DELETE ON "CompatibilityRule"
    FOR EACH ROW WHEN (NOT is_taking_in()) EXECUTE FUNCTION "CompatibilityRule_stays"();
CREATE OR REPLACE TRIGGER "PlanSlot_stays_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "PlanSlot"
    FOR EACH ROW WHEN (NOT is_taking_in()) EXECUTE FUNCTION refuse_slot_of_frozen_plan();
