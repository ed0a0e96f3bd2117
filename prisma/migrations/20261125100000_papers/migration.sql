-- Papers and who may open them: issued papers, licenses, private links for engineers and customers,
-- calendar feeds; and the lists of what falls due and of the time jobs spend in each stage.

CREATE TABLE issued_paper (
  company_id TEXT NOT NULL,
  job TEXT NOT NULL,
  paper TEXT NOT NULL,
  about TEXT NOT NULL,
  size TEXT NOT NULL,
  pos INTEGER NOT NULL,
  record_digest TEXT NOT NULL,
  pdf_digest TEXT NOT NULL,
  -- Persons and sites whose words stand in the print: when one is erased, the print goes.
  parties TEXT[],
  issued_at TIMESTAMPTZ(6) NOT NULL,
  CONSTRAINT issued_paper_pkey PRIMARY KEY (company_id, job, paper, about)
);
CREATE INDEX issued_paper_parties_idx ON issued_paper USING GIN (parties);

CREATE TABLE license (
  company_id TEXT NOT NULL,
  id TEXT NOT NULL,
  person TEXT,
  name TEXT NOT NULL,
  number TEXT NOT NULL,
  jurisdiction TEXT NOT NULL,
  expires DATE NOT NULL,
  standing TEXT NOT NULL CHECK (standing IN ('active', 'inactive', 'suspended')),
  -- How and when somebody looked it up; none: as its holder states it.
  checked_on DATE,
  checked_how TEXT,
  changed_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  changed_by TEXT NOT NULL,
  CONSTRAINT license_pkey PRIMARY KEY (company_id, id),
  CHECK ((checked_on IS NULL) = (checked_how IS NULL))
);
CREATE UNIQUE INDEX license_company_id_jurisdiction_number_key ON license (company_id, jurisdiction, number);

-- A link opens one packet once, for one visit; the code for signing is sent another way.
CREATE TABLE packet_link (
  company_id TEXT NOT NULL,
  token_digest BYTEA NOT NULL CHECK (length(token_digest) = 32),
  job TEXT NOT NULL,
  request TEXT NOT NULL,
  engineer TEXT NOT NULL,
  made_by TEXT NOT NULL,
  expires_at TIMESTAMPTZ(6) NOT NULL,
  used_at TIMESTAMPTZ(6),
  visit_digest BYTEA CHECK (length(visit_digest) = 32),
  visit_ends_at TIMESTAMPTZ(6),
  code_hash TEXT,
  code_ends_at TIMESTAMPTZ(6),
  code_attempts INTEGER NOT NULL DEFAULT 0,
  answered_at TIMESTAMPTZ(6),
  CONSTRAINT packet_link_pkey PRIMARY KEY (company_id, token_digest)
);
CREATE UNIQUE INDEX packet_link_token_digest_key ON packet_link (token_digest);
CREATE UNIQUE INDEX packet_link_visit_digest_key ON packet_link (visit_digest);
CREATE INDEX packet_link_company_id_job_request_idx ON packet_link (company_id, job, request);

CREATE TABLE customer_link (
  company_id TEXT NOT NULL,
  token_digest BYTEA NOT NULL CHECK (length(token_digest) = 32),
  job TEXT NOT NULL,
  party TEXT NOT NULL,
  -- [{"paper": "order", "about": "o1/1"}]
  papers JSONB NOT NULL,
  made_by TEXT NOT NULL,
  made_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  expires_at TIMESTAMPTZ(6) NOT NULL,
  CONSTRAINT customer_link_pkey PRIMARY KEY (company_id, token_digest)
);
CREATE UNIQUE INDEX customer_link_token_digest_key ON customer_link (token_digest);

CREATE TABLE calendar_feed (
  company_id TEXT NOT NULL,
  token_digest BYTEA NOT NULL CHECK (length(token_digest) = 32),
  person_id TEXT NOT NULL,
  made_at TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT calendar_feed_pkey PRIMARY KEY (company_id, token_digest)
);
CREATE UNIQUE INDEX calendar_feed_token_digest_key ON calendar_feed (token_digest);

CREATE TABLE reminder (
  company_id TEXT NOT NULL,
  generation INTEGER NOT NULL,
  job TEXT NOT NULL,
  kind TEXT NOT NULL,
  about TEXT NOT NULL,
  number TEXT NOT NULL,
  job_name TEXT NOT NULL,
  falls_on DATE NOT NULL,
  words TEXT NOT NULL,
  CONSTRAINT reminder_pkey PRIMARY KEY (company_id, generation, job, kind, about)
);
CREATE INDEX reminder_company_id_generation_falls_on_idx ON reminder (company_id, generation, falls_on);

-- A job enters a stage, or begins to wait on somebody else; it ends where the next one begins.
CREATE TABLE stage_spell (
  company_id TEXT NOT NULL,
  generation INTEGER NOT NULL,
  job TEXT NOT NULL,
  version INTEGER NOT NULL,
  stage TEXT NOT NULL,
  waits_on TEXT NOT NULL,
  began_at TIMESTAMPTZ(6) NOT NULL,
  CONSTRAINT stage_spell_pkey PRIMARY KEY (company_id, generation, job, version)
);

CREATE TABLE stage_confirmation (
  company_id TEXT NOT NULL,
  generation INTEGER NOT NULL,
  job TEXT NOT NULL,
  version INTEGER NOT NULL,
  stage TEXT NOT NULL,
  overrides INTEGER NOT NULL,
  CONSTRAINT stage_confirmation_pkey PRIMARY KEY (company_id, generation, job, version)
);

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['issued_paper', 'license', 'packet_link', 'customer_link', 'calendar_feed',
    'reminder', 'stage_spell', 'stage_confirmation'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format(
      'CREATE POLICY company ON %I USING (ledger.company() <> '''' AND company_id = ledger.company())',
      name);
  END LOOP;
END $$;

-- Opening a packet uses its link up and begins the one visit it is good for.
CREATE FUNCTION door.open_packet(given_digest bytea, new_visit bytea)
RETURNS TABLE (company_id text, job text, request text, engineer text)
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE packet_link l SET used_at = now(), visit_digest = new_visit, visit_ends_at = now() + interval '1 hour'
  WHERE l.token_digest = given_digest AND l.used_at IS NULL AND l.expires_at > now()
  RETURNING l.company_id, l.job, l.request, l.engineer
$$;

CREATE FUNCTION door.packet_visit(given_visit bytea)
RETURNS TABLE (company_id text, job text, request text, engineer text, token_digest bytea)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT l.company_id, l.job, l.request, l.engineer, l.token_digest FROM packet_link l
  WHERE l.visit_digest = given_visit AND l.visit_ends_at > now() AND l.answered_at IS NULL
$$;

CREATE FUNCTION door.customer_link(given_digest bytea)
RETURNS TABLE (company_id text, job text, party text, papers jsonb)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT l.company_id, l.job, l.party, l.papers FROM customer_link l
  WHERE l.token_digest = given_digest AND l.expires_at > now()
$$;

CREATE FUNCTION door.calendar(given_digest bytea)
RETURNS TABLE (company_id text, person_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT f.company_id, f.person_id FROM calendar_feed f
  JOIN person p ON p.company_id = f.company_id AND p.id = f.person_id
  WHERE f.token_digest = given_digest AND p.active
$$;

REVOKE ALL ON issued_paper, license, packet_link, customer_link, calendar_feed, reminder, stage_spell,
  stage_confirmation FROM PUBLIC;
REVOKE ALL ON FUNCTION door.open_packet(bytea, bytea), door.packet_visit(bytea),
  door.customer_link(bytea), door.calendar(bytea) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION door.open_packet(bytea, bytea), door.packet_visit(bytea),
  door.customer_link(bytea), door.calendar(bytea) TO gauge_service;
GRANT SELECT, INSERT ON issued_paper, license, packet_link, customer_link, calendar_feed, reminder,
  stage_spell, stage_confirmation TO gauge_service;
GRANT UPDATE (person, name, number, jurisdiction, expires, standing, checked_on, checked_how, changed_at,
  changed_by) ON license TO gauge_service;
GRANT UPDATE (code_hash, code_ends_at, code_attempts, visit_ends_at, answered_at) ON packet_link TO gauge_service;
GRANT DELETE ON calendar_feed, customer_link TO gauge_service;
GRANT UPDATE, DELETE ON reminder, stage_spell, stage_confirmation TO gauge_service;
