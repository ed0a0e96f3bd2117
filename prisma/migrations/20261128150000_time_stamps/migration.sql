-- Time-stamps of signed checkpoints by an outside authority (RFC 3161), as they were asked for and given.
CREATE TABLE ledger.time_stamp (
  log_id text COLLATE "C" NOT NULL,
  -- Of the checkpoint.
  size bigint NOT NULL CHECK (size > 0),
  request bytea NOT NULL,
  reply bytea NOT NULL,
  -- The certificates that were trusted then, PEM.
  trusted text NOT NULL,
  kept_at timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (log_id, size)
);

CREATE TRIGGER kept BEFORE UPDATE OR DELETE OR TRUNCATE ON ledger.time_stamp
  FOR EACH STATEMENT EXECUTE FUNCTION ledger.refuse();
ALTER TABLE ledger.time_stamp ENABLE ROW LEVEL SECURITY;
CREATE POLICY company ON ledger.time_stamp
  USING (ledger.company() <> '' AND log_id = ledger.company());

REVOKE ALL ON ledger.time_stamp FROM PUBLIC;
GRANT SELECT, INSERT ON ledger.time_stamp TO gauge_service;
