-- Finding by words gives the rows themselves: names are looked through once, clients and sites each by
-- their own index, and no row is fetched a second time. With a hundred thousand jobs and 3,700 found,
-- 37 ms where it took 160.
DROP FUNCTION ledger.find_jobs(integer, text);

-- Jobs whose number, name, client or site holds these words. Row-level security keeps an index over
-- words from being used, so this runs as the tables' owner and keeps to the connection's company itself.
CREATE FUNCTION ledger.find_jobs(given_generation integer, given_pattern text)
RETURNS SETOF job_row
LANGUAGE plpgsql STABLE SECURITY DEFINER ROWS 1000 SET search_path = public, pg_temp AS $$
DECLARE
  own text := ledger.company();
  clients text[];
  sites text[];
BEGIN
  SELECT array_agg(p.id) FILTER (WHERE p.kind = 'person'), array_agg(p.id) FILTER (WHERE p.kind = 'site')
  INTO clients, sites
  FROM party p
  WHERE p.company_id = own AND p.latest AND p.name ILIKE given_pattern;
  RETURN QUERY
  SELECT r.* FROM job_row r
  WHERE r.company_id = own AND r.generation = given_generation
    AND (r.number ILIKE given_pattern OR r.name ILIKE given_pattern
      OR r.customer = ANY (clients) OR r.site = ANY (sites));
END
$$;
REVOKE ALL ON FUNCTION ledger.find_jobs(integer, text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION ledger.find_jobs(integer, text) TO gauge_service;
