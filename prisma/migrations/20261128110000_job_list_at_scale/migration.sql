-- The job list with a hundred thousand jobs: an index for each order and each filter that holds the ids,
-- so that a far page is cut without its rows; and finding by words with trigrams where the server has
-- them.

DROP INDEX job_row_company_id_generation_due_number_idx;
DROP INDEX job_row_company_id_generation_number_idx;
DROP INDEX job_row_company_id_generation_updated_at_idx;
CREATE INDEX job_row_company_id_generation_due_number_idx
  ON job_row (company_id, generation, due, number) INCLUDE (id);
CREATE INDEX job_row_company_id_generation_number_idx
  ON job_row (company_id, generation, number) INCLUDE (id);
CREATE INDEX job_row_company_id_generation_updated_at_idx
  ON job_row (company_id, generation, updated_at, number) INCLUDE (id);
CREATE INDEX job_row_due_last_idx
  ON job_row (company_id, generation, due DESC NULLS LAST, number DESC) INCLUDE (id);
CREATE INDEX job_row_stage_order_idx
  ON job_row (company_id, generation, stage_order, due, number) INCLUDE (id);
CREATE INDEX job_row_stage_order_last_idx
  ON job_row (company_id, generation, stage_order DESC, due, number) INCLUDE (id);
CREATE INDEX job_row_state_idx
  ON job_row (company_id, generation, state, due, number) INCLUDE (id);
CREATE INDEX job_row_stage_idx
  ON job_row (company_id, generation, stage, due, number) INCLUDE (id);
CREATE INDEX job_row_assigned_idx
  ON job_row (company_id, generation, assigned, due, number) INCLUDE (id);
CREATE INDEX job_row_customer_idx ON job_row (company_id, generation, customer) INCLUDE (id);
CREATE INDEX job_row_site_idx ON job_row (company_id, generation, site) INCLUDE (id);

DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_available_extensions WHERE name = 'pg_trgm') THEN
    CREATE EXTENSION IF NOT EXISTS pg_trgm SCHEMA public;
    CREATE INDEX job_row_number_words ON job_row USING gin (number gin_trgm_ops);
    CREATE INDEX job_row_name_words ON job_row USING gin (name gin_trgm_ops);
    CREATE INDEX party_name_words ON party USING gin (name gin_trgm_ops) WHERE latest;
  END IF;
END $$;

-- Jobs whose number, name, client or site holds these words. Row-level security keeps such an index
-- from being used, so this runs as the tables' owner and keeps to the connection's company itself.
CREATE FUNCTION ledger.find_jobs(given_generation integer, given_pattern text)
RETURNS SETOF text
LANGUAGE sql STABLE SECURITY DEFINER ROWS 1000 SET search_path = public, pg_temp AS $$
  SELECT r.id FROM job_row r
  WHERE r.company_id = ledger.company() AND r.generation = given_generation
    AND (r.number ILIKE given_pattern OR r.name ILIKE given_pattern)
  UNION
  SELECT r.id FROM party p
  JOIN job_row r ON r.company_id = p.company_id AND r.generation = given_generation
    AND r.customer = p.id
  WHERE p.company_id = ledger.company() AND p.latest AND p.name ILIKE given_pattern
  UNION
  SELECT r.id FROM party p
  JOIN job_row r ON r.company_id = p.company_id AND r.generation = given_generation
    AND r.site = p.id
  WHERE p.company_id = ledger.company() AND p.latest AND p.name ILIKE given_pattern
$$;
REVOKE ALL ON FUNCTION ledger.find_jobs(integer, text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION ledger.find_jobs(integer, text) TO gauge_service;
