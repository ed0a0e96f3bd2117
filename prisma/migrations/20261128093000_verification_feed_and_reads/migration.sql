-- Verification of whole logs as a job of the service, the feed of events, and a list of who read what.

-- One row a run, asked for or nightly. A run goes on from "frontier" wherever it stopped; it looks
-- the log over and decides nothing, so that altering this table hides nothing for longer than a day.
CREATE TABLE ledger.verification (
  log_id text COLLATE "C" NOT NULL,
  run text COLLATE "C" NOT NULL,
  -- None: nightly.
  asked_by text,
  started_at timestamptz NOT NULL DEFAULT now(),
  updated_at timestamptz NOT NULL DEFAULT now(),
  finished_at timestamptz,
  -- Entries found good so far, of how many.
  done bigint NOT NULL DEFAULT 0,
  head bigint NOT NULL DEFAULT 0,
  frontier bytea NOT NULL DEFAULT '',
  last_at bigint NOT NULL DEFAULT 0,
  met integer NOT NULL DEFAULT 0,
  last_met bigint NOT NULL DEFAULT 0,
  -- Size of the checkpoint kept outside the database; none: there was none.
  checkpoint bigint,
  result text CHECK (result IN ('sound', 'damaged')),
  fault_pos bigint,
  fault_says text,
  -- Why it stands still.
  trouble text,
  PRIMARY KEY (log_id, run),
  CHECK ((finished_at IS NULL) = (result IS NULL)),
  CHECK ((result = 'damaged') IS NOT DISTINCT FROM (fault_says IS NOT NULL) OR result IS NULL)
);
CREATE INDEX verification_open ON ledger.verification (started_at) WHERE finished_at IS NULL;
CREATE INDEX verification_started ON ledger.verification (log_id, started_at);

-- Who read or exported what is sensitive. Ids only: nothing here is the personal data itself.
CREATE TABLE ledger.reading (
  log_id text COLLATE "C" NOT NULL,
  id text COLLATE "C" NOT NULL,
  at timestamptz NOT NULL DEFAULT now(),
  reader text NOT NULL,
  -- A person of the company, or who has a feed's token.
  reader_kind text NOT NULL CHECK (reader_kind IN ('person', 'feed')),
  what text NOT NULL,
  about text NOT NULL,
  why text,
  -- Reading the same again within the hour is the same reading; none: each one counts.
  hour timestamptz,
  PRIMARY KEY (log_id, id)
);
CREATE UNIQUE INDEX reading_hour ON ledger.reading (log_id, reader, what, about, hour);
CREATE INDEX reading_at ON ledger.reading (log_id, at);

-- A token that reads the feed of events and nothing else.
CREATE TABLE ledger.feed_token (
  log_id text COLLATE "C" NOT NULL,
  id text COLLATE "C" NOT NULL,
  token_digest bytea NOT NULL CHECK (length(token_digest) = 32),
  name text NOT NULL,
  made_by text NOT NULL,
  made_at timestamptz NOT NULL DEFAULT now(),
  ended_at timestamptz,
  PRIMARY KEY (log_id, id)
);
CREATE UNIQUE INDEX feed_token_digest ON ledger.feed_token (token_digest);

-- Readings are neither changed nor removed before their time is over, by their owner neither.
CREATE FUNCTION ledger.refuse_early() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.at < now() - interval '6 years' THEN
    RETURN OLD;
  END IF;
  RAISE EXCEPTION '% on ledger.% is refused: it is kept for six years.', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'insufficient_privilege';
END $$;
CREATE TRIGGER kept BEFORE UPDATE OR TRUNCATE ON ledger.reading
  FOR EACH STATEMENT EXECUTE FUNCTION ledger.refuse();
CREATE TRIGGER kept_six_years BEFORE DELETE ON ledger.reading
  FOR EACH ROW EXECUTE FUNCTION ledger.refuse_early();

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['verification', 'reading', 'feed_token'] LOOP
    EXECUTE format('ALTER TABLE ledger.%I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY company ON ledger.%I USING (ledger.company() <> '''' AND log_id = ledger.company())',
      name);
  END LOOP;
END $$;

-- The next company's log to look over, asked by the job before any company is known: a run that was
-- begun and not finished, or a log that has none since a moment. One row, which names the company alone.
CREATE FUNCTION door.next_to_verify(since timestamptz, passed_over text[])
RETURNS TABLE (log_id text, run text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, ledger, pg_temp AS $$
  SELECT c.id, v.run FROM company c
  LEFT JOIN verification v ON v.log_id = c.id AND v.finished_at IS NULL
  WHERE c.id <> ALL (passed_over) AND (v.run IS NOT NULL OR (since IS NOT NULL AND NOT EXISTS (
    SELECT FROM verification w WHERE w.log_id = c.id AND w.started_at >= since)))
  ORDER BY v.started_at NULLS LAST, c.id LIMIT 1
$$;

-- For the metrics: of how many logs the last finished run found damage, how many have none, and how
-- long ago the oldest of these last runs was. No log is named.
CREATE FUNCTION door.verification_summary()
RETURNS TABLE (damaged integer, never integer, oldest_seconds double precision)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, ledger, pg_temp AS $$
  SELECT count(*) FILTER (WHERE v.result = 'damaged')::integer,
    count(*) FILTER (WHERE v.result IS NULL)::integer,
    extract(epoch FROM now() - min(v.finished_at))::double precision
  FROM company c LEFT JOIN LATERAL (
    SELECT result, finished_at FROM verification w
    WHERE w.log_id = c.id AND w.finished_at IS NOT NULL
    ORDER BY finished_at DESC LIMIT 1) v ON true
$$;

CREATE FUNCTION door.feed(given_digest bytea)
RETURNS TABLE (log_id text, id text, name text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = ledger, pg_temp AS $$
  SELECT t.log_id, t.id, t.name FROM feed_token t
  WHERE t.token_digest = given_digest AND t.ended_at IS NULL
$$;

REVOKE ALL ON ledger.verification, ledger.reading, ledger.feed_token FROM PUBLIC;
REVOKE ALL ON FUNCTION door.next_to_verify(timestamptz, text[]), door.verification_summary(), door.feed(bytea)
  FROM PUBLIC;
GRANT EXECUTE ON FUNCTION door.next_to_verify(timestamptz, text[]), door.verification_summary(),
  door.feed(bytea) TO gauge_service;
GRANT SELECT, INSERT ON ledger.verification, ledger.reading, ledger.feed_token TO gauge_service;
GRANT UPDATE (updated_at, finished_at, done, head, frontier, last_at, met, last_met, checkpoint, result,
  fault_pos, fault_says, trouble) ON ledger.verification TO gauge_service;
GRANT DELETE ON ledger.reading TO gauge_service;
GRANT UPDATE (ended_at) ON ledger.feed_token TO gauge_service;
