-- A session ends seven days after it was opened, whatever renews it meanwhile.
CREATE FUNCTION hold_session() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    NEW."expiresAt" := least(NEW."expiresAt", NEW."createdAt" + interval '7 days');
    RETURN NEW;
END
$$;
CREATE TRIGGER hold_session BEFORE INSERT OR UPDATE ON "Session" FOR EACH ROW EXECUTE FUNCTION hold_session();
