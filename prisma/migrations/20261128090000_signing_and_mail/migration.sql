-- What a signed-in engineer signs with, reminders that were mailed, and failed attempts at signing in
-- where every instance of the service sees them.

-- One row for each session in which somebody signs: a code sent another way, until when it stands, and
-- whether both factors were just given for one signature.
CREATE TABLE signing_session (
  company_id TEXT NOT NULL,
  session_digest BYTEA NOT NULL CHECK (length(session_digest) = 32),
  person_id TEXT NOT NULL,
  asked_at TIMESTAMPTZ(6),
  code_hash TEXT,
  code_ends_at TIMESTAMPTZ(6),
  attempts INTEGER NOT NULL DEFAULT 0,
  proven_until TIMESTAMPTZ(6),
  ready_until TIMESTAMPTZ(6),
  CONSTRAINT signing_session_pkey PRIMARY KEY (company_id, session_digest)
);
CREATE INDEX signing_session_company_id_person_id_idx ON signing_session (company_id, person_id);

-- One row for each person and thing due: claimed by the instance that mails it, then sent.
CREATE TABLE mailed_reminder (
  company_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  -- Empty for what belongs to no job.
  job TEXT NOT NULL,
  kind TEXT NOT NULL,
  about TEXT NOT NULL,
  falls_on DATE NOT NULL,
  claimed_at TIMESTAMPTZ(6) NOT NULL,
  sent_at TIMESTAMPTZ(6),
  CONSTRAINT mailed_reminder_pkey PRIMARY KEY (company_id, person_id, job, kind, about, falls_on)
);

ALTER TABLE person ADD COLUMN reminder_mail BOOLEAN NOT NULL DEFAULT true;

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['signing_session', 'mailed_reminder'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY company ON %I USING (ledger.company() <> '''' AND company_id = ledger.company())',
      name);
  END LOOP;
END $$;

REVOKE ALL ON signing_session, mailed_reminder FROM PUBLIC;
GRANT SELECT, INSERT, DELETE ON signing_session, mailed_reminder TO gauge_service;
GRANT UPDATE (asked_at, code_hash, code_ends_at, attempts, proven_until, ready_until) ON signing_session
  TO gauge_service;
GRANT UPDATE (claimed_at, sent_at) ON mailed_reminder TO gauge_service;
GRANT UPDATE (reminder_mail) ON person TO gauge_service;

-- Failed attempts are counted before the company is known, so behind a door: by the digest of the
-- address or e-mail they were made with, and forgotten after the window.
CREATE TABLE door.failed_attempt (
  key BYTEA NOT NULL CHECK (length(key) = 32),
  at TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp()
);
CREATE INDEX failed_attempt_key_at_idx ON door.failed_attempt (key, at);
CREATE INDEX failed_attempt_at_idx ON door.failed_attempt (at);
REVOKE ALL ON door.failed_attempt FROM PUBLIC;

-- Seconds until another attempt is taken; 0 where it is taken now.
CREATE FUNCTION door.must_wait(keys bytea[], most integer, within interval)
RETURNS integer
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = door, pg_temp AS $$
  SELECT coalesce(max(ceil(extract(epoch FROM oldest + within - clock_timestamp()))::integer), 0) FROM (
    SELECT min(at) AS oldest FROM door.failed_attempt
    WHERE key = ANY(keys) AND at > clock_timestamp() - within AND at <= clock_timestamp()
    GROUP BY key HAVING count(*) >= most
  ) waiting
$$;

CREATE FUNCTION door.attempt_failed(keys bytea[], within interval)
RETURNS void
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = door, pg_temp AS $$
  DELETE FROM door.failed_attempt WHERE at < clock_timestamp() - within;
  INSERT INTO door.failed_attempt (key) SELECT unnest(keys);
$$;

CREATE FUNCTION door.attempt_succeeded(keys bytea[])
RETURNS void
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = door, pg_temp AS $$
  DELETE FROM door.failed_attempt WHERE key = ANY(keys);
$$;

REVOKE ALL ON FUNCTION door.must_wait(bytea[], integer, interval),
  door.attempt_failed(bytea[], interval), door.attempt_succeeded(bytea[]) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION door.must_wait(bytea[], integer, interval),
  door.attempt_failed(bytea[], interval), door.attempt_succeeded(bytea[]) TO gauge_service;

-- Companies that may have something to mail; no name and nothing else of theirs.
CREATE FUNCTION door.companies()
RETURNS TABLE (company_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT id FROM company ORDER BY id
$$;
REVOKE ALL ON FUNCTION door.companies() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION door.companies() TO gauge_service;
