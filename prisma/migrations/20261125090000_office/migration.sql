-- Beside the ledger: companies, people and sessions, erasable personal data, files, and the lists
-- that subscribers keep. The same walls as the ledger's stand around every table.

CREATE TABLE company (
  id TEXT NOT NULL CHECK (id <> ''),
  name TEXT NOT NULL,
  created_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT company_pkey PRIMARY KEY (id)
);

CREATE TABLE person (
  company_id TEXT NOT NULL,
  id TEXT NOT NULL,
  email TEXT NOT NULL CHECK (email = lower(email)),
  name TEXT NOT NULL,
  password_hash TEXT,
  roles TEXT[],
  active BOOLEAN NOT NULL DEFAULT true,
  created_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT person_pkey PRIMARY KEY (company_id, id)
);
CREATE UNIQUE INDEX person_email_key ON person (email);

CREATE TABLE session (
  company_id TEXT NOT NULL,
  token_digest BYTEA NOT NULL CHECK (length(token_digest) = 32),
  person_id TEXT NOT NULL,
  csrf TEXT NOT NULL,
  created_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  expires_at TIMESTAMPTZ(6) NOT NULL,
  CONSTRAINT session_pkey PRIMARY KEY (company_id, token_digest)
);
CREATE UNIQUE INDEX session_token_digest_key ON session (token_digest);
CREATE INDEX session_company_id_person_id_idx ON session (company_id, person_id);

CREATE TABLE sign_in_link (
  company_id TEXT NOT NULL,
  token_digest BYTEA NOT NULL CHECK (length(token_digest) = 32),
  person_id TEXT,
  expires_at TIMESTAMPTZ(6) NOT NULL,
  used_at TIMESTAMPTZ(6),
  CONSTRAINT sign_in_link_pkey PRIMARY KEY (company_id, token_digest)
);
CREATE UNIQUE INDEX sign_in_link_token_digest_key ON sign_in_link (token_digest);

-- "details" and "salt" go when a person is erased; the commitment stays, so that proofs stay valid.
CREATE TABLE party (
  company_id TEXT NOT NULL,
  id TEXT NOT NULL,
  version INTEGER NOT NULL CHECK (version > 0),
  latest BOOLEAN NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('person', 'site')),
  name TEXT,
  details JSONB,
  salt BYTEA,
  commitment TEXT NOT NULL,
  created_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  created_by TEXT NOT NULL,
  erased_at TIMESTAMPTZ(6),
  erased_by TEXT,
  reason TEXT,
  CONSTRAINT party_pkey PRIMARY KEY (company_id, id, version),
  CHECK ((details IS NULL) = (erased_at IS NOT NULL) AND (salt IS NULL) = (erased_at IS NOT NULL))
);
CREATE UNIQUE INDEX party_latest ON party (company_id, id) WHERE latest;

CREATE TABLE file (
  company_id TEXT NOT NULL,
  digest TEXT NOT NULL,
  name TEXT NOT NULL,
  type TEXT NOT NULL,
  size INTEGER NOT NULL,
  bytes BYTEA NOT NULL,
  created_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  created_by TEXT NOT NULL,
  CONSTRAINT file_pkey PRIMARY KEY (company_id, digest)
);

CREATE TABLE job_row (
  company_id TEXT NOT NULL,
  generation INTEGER NOT NULL,
  id TEXT NOT NULL,
  version INTEGER NOT NULL,
  number TEXT NOT NULL,
  name TEXT NOT NULL,
  customer TEXT NOT NULL,
  site TEXT NOT NULL,
  stage TEXT NOT NULL,
  stage_order INTEGER NOT NULL,
  stage_words TEXT NOT NULL,
  state TEXT NOT NULL,
  surfaces_done INTEGER NOT NULL,
  surfaces INTEGER NOT NULL,
  next_action TEXT NOT NULL,
  waits_on TEXT NOT NULL,
  due DATE,
  assigned TEXT,
  updated_at TIMESTAMPTZ(6) NOT NULL,
  CONSTRAINT job_row_pkey PRIMARY KEY (company_id, generation, id)
);
CREATE INDEX job_row_company_id_generation_due_number_idx ON job_row (company_id, generation, due, number);
CREATE INDEX job_row_company_id_generation_number_idx ON job_row (company_id, generation, number);
CREATE INDEX job_row_company_id_generation_updated_at_idx ON job_row (company_id, generation, updated_at);

CREATE TABLE unsigned_surface (
  company_id TEXT NOT NULL,
  generation INTEGER NOT NULL,
  job TEXT NOT NULL,
  surface TEXT NOT NULL,
  number TEXT NOT NULL,
  job_name TEXT NOT NULL,
  surface_name TEXT NOT NULL,
  waits_for TEXT NOT NULL,
  engineer TEXT,
  asked_at TIMESTAMPTZ(6),
  since TIMESTAMPTZ(6) NOT NULL,
  due DATE,
  CONSTRAINT unsigned_surface_pkey PRIMARY KEY (company_id, generation, job, surface)
);
CREATE INDEX unsigned_surface_company_id_generation_since_idx
  ON unsigned_surface (company_id, generation, since);

CREATE TABLE sign_off_request (
  company_id TEXT NOT NULL,
  generation INTEGER NOT NULL,
  job TEXT NOT NULL,
  request TEXT NOT NULL,
  number TEXT NOT NULL,
  job_name TEXT NOT NULL,
  surfaces JSONB NOT NULL,
  engineer TEXT NOT NULL,
  asked_at TIMESTAMPTZ(6) NOT NULL,
  asked_by TEXT NOT NULL,
  expires DATE NOT NULL,
  standing TEXT NOT NULL,
  due DATE,
  CONSTRAINT sign_off_request_pkey PRIMARY KEY (company_id, generation, job, request)
);
CREATE INDEX sign_off_request_company_id_generation_asked_at_idx
  ON sign_off_request (company_id, generation, asked_at);

-- Company walls, as in the ledger: no company on the connection is an error.
DO $$
DECLARE
  name text;
BEGIN
  EXECUTE 'ALTER TABLE company ENABLE ROW LEVEL SECURITY';
  EXECUTE 'CREATE POLICY company ON company USING (ledger.company() <> '''' AND id = ledger.company())';
  FOREACH name IN ARRAY ARRAY['person', 'session', 'sign_in_link', 'party', 'file', 'job_row',
    'unsigned_surface', 'sign_off_request'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY company ON %I USING (ledger.company() <> '''' AND company_id = ledger.company())',
      name);
  END LOOP;
END $$;

-- The doors of the walls: each is asked with what only its holder knows, and gives one row.
CREATE SCHEMA door;

CREATE FUNCTION door.sign_in(given_email text)
RETURNS TABLE (company_id text, person_id text, password_hash text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT p.company_id, p.id, p.password_hash FROM person p
  WHERE p.email = lower(given_email) AND p.active
$$;

CREATE FUNCTION door.session(given_digest bytea)
RETURNS TABLE (company_id text, company_name text, person_id text, name text, email text,
  roles text[], csrf text, expires_at timestamptz)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT s.company_id, c.name, p.id, p.name, p.email, p.roles, s.csrf, s.expires_at
  FROM session s
  JOIN company c ON c.id = s.company_id
  JOIN person p ON p.company_id = s.company_id AND p.id = s.person_id
  WHERE s.token_digest = given_digest AND s.expires_at > now() AND p.active
$$;

-- A link is used up by asking for it.
CREATE FUNCTION door.use_link(given_digest bytea)
RETURNS TABLE (company_id text, person_id text)
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE sign_in_link l SET used_at = now()
  WHERE l.token_digest = given_digest AND l.used_at IS NULL AND l.expires_at > now()
  RETURNING l.company_id, l.person_id
$$;

REVOKE ALL ON ALL TABLES IN SCHEMA public FROM PUBLIC;
REVOKE ALL ON ALL FUNCTIONS IN SCHEMA door FROM PUBLIC;
GRANT USAGE ON SCHEMA public, door TO gauge_service;
GRANT EXECUTE ON ALL FUNCTIONS IN SCHEMA door TO gauge_service;
GRANT SELECT, INSERT ON company, person, session, sign_in_link, party, file, job_row,
  unsigned_surface, sign_off_request TO gauge_service;
GRANT UPDATE (name) ON company TO gauge_service;
GRANT UPDATE (email, name, password_hash, roles, active) ON person TO gauge_service;
GRANT UPDATE (expires_at), DELETE ON session TO gauge_service;
GRANT DELETE ON sign_in_link TO gauge_service;
GRANT UPDATE (latest, name, details, salt, erased_at, erased_by, reason) ON party TO gauge_service;
GRANT UPDATE, DELETE ON job_row, unsigned_surface, sign_off_request TO gauge_service;
