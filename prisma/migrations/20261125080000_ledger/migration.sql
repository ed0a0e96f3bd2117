-- The ledger: one log for each company, events kept for ever, and the walls between companies.
-- "log_id" is the company's id and leads every key, so that logs can live on different servers.

DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'gauge_service') THEN
    CREATE ROLE gauge_service NOLOGIN;
  END IF;
END $$;

CREATE SCHEMA ledger;

-- The company a connection works for. None is an error, never an empty answer. The first function
-- is plain enough for the planner to take its place, so that the walls cost next to nothing.
CREATE FUNCTION ledger.no_company() RETURNS text LANGUAGE plpgsql STABLE AS $$
BEGIN
  RAISE EXCEPTION 'No company is set on this connection.' USING ERRCODE = 'insufficient_privilege';
END $$;
CREATE FUNCTION ledger.company() RETURNS text LANGUAGE sql STABLE AS $$
  SELECT coalesce(nullif(current_setting('gauge.company', true), ''), ledger.no_company())
$$;

-- Head, last time, and right edge of the tree; every append compares and sets this row.
CREATE TABLE ledger.log (
  log_id text COLLATE "C" PRIMARY KEY CHECK (log_id <> ''),
  head bigint NOT NULL CHECK (head >= 0),
  last_at timestamptz,
  frontier bytea NOT NULL,
  root bytea NOT NULL CHECK (length(root) = 32)
) WITH (fillfactor = 20);

-- "body" is what is hashed; the columns beside it are copies for the indexes.
CREATE TABLE ledger.event (
  log_id text COLLATE "C" NOT NULL,
  pos bigint NOT NULL CHECK (pos > 0),
  stream_id text COLLATE "C" NOT NULL,
  version integer NOT NULL CHECK (version > 0),
  type text COLLATE "C" NOT NULL,
  recorded_at timestamptz NOT NULL,
  effective_at timestamptz NOT NULL,
  body text NOT NULL,
  leaf bytea NOT NULL CHECK (length(leaf) = 32),
  PRIMARY KEY (log_id, pos),
  UNIQUE (log_id, stream_id, version)
);

-- Accepted commands, so that the same one is answered again and not done again; kept 90 days.
CREATE TABLE ledger.command (
  log_id text COLLATE "C" NOT NULL,
  command_id text COLLATE "C" NOT NULL,
  digest text COLLATE "C" NOT NULL,
  first_pos bigint NOT NULL,
  last_pos bigint NOT NULL,
  versions jsonb NOT NULL,
  recorded_at timestamptz NOT NULL,
  PRIMARY KEY (log_id, command_id)
);

-- Signed checkpoints, as signed notes.
CREATE TABLE ledger.checkpoint (
  log_id text COLLATE "C" NOT NULL,
  size bigint NOT NULL,
  root bytea NOT NULL CHECK (length(root) = 32),
  note text NOT NULL,
  signed_at timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (log_id, size)
);

-- Bytes of issued documents by their SHA-256; the bytes go when a person in them is erased.
CREATE TABLE ledger.issued (
  log_id text COLLATE "C" NOT NULL,
  digest bytea NOT NULL CHECK (length(digest) = 32),
  media_type text NOT NULL,
  bytes bytea,
  issued_at timestamptz NOT NULL DEFAULT now(),
  erased_at timestamptz,
  PRIMARY KEY (log_id, digest),
  CHECK ((bytes IS NULL) = (erased_at IS NOT NULL))
);

-- How far each list has come; one generation of a name is live.
CREATE TABLE ledger.projection (
  log_id text COLLATE "C" NOT NULL,
  name text COLLATE "C" NOT NULL,
  generation integer NOT NULL CHECK (generation > 0),
  pos bigint NOT NULL CHECK (pos >= 0),
  live boolean NOT NULL,
  PRIMARY KEY (log_id, name, generation)
) WITH (fillfactor = 50);

-- Nothing here changes or removes an event, its owner included.
CREATE FUNCTION ledger.refuse() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% on ledger.% is refused: it is kept as written.', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'insufficient_privilege';
END $$;

CREATE TRIGGER kept BEFORE UPDATE OR DELETE OR TRUNCATE ON ledger.event
  FOR EACH STATEMENT EXECUTE FUNCTION ledger.refuse();
CREATE TRIGGER kept BEFORE UPDATE OR DELETE OR TRUNCATE ON ledger.checkpoint
  FOR EACH STATEMENT EXECUTE FUNCTION ledger.refuse();

-- Company walls. The first half of each condition names no column, so that it is asked once and a
-- connection without a company fails even on an empty table.
DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['log', 'event', 'command', 'checkpoint', 'issued', 'projection'] LOOP
    EXECUTE format('ALTER TABLE ledger.%I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY company ON ledger.%I USING (ledger.company() <> '''' AND log_id = ledger.company())',
      name);
  END LOOP;
END $$;

REVOKE ALL ON ALL TABLES IN SCHEMA ledger FROM PUBLIC;
GRANT USAGE ON SCHEMA ledger TO gauge_service;
GRANT SELECT, INSERT ON ledger.log, ledger.event, ledger.command, ledger.checkpoint, ledger.issued,
  ledger.projection TO gauge_service;
GRANT UPDATE (head, last_at, frontier, root) ON ledger.log TO gauge_service;
GRANT DELETE ON ledger.command TO gauge_service;
GRANT UPDATE (bytes, erased_at) ON ledger.issued TO gauge_service;
GRANT UPDATE, DELETE ON ledger.projection TO gauge_service;
