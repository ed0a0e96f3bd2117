-- The walls ask for the connection's company once a statement, not once a row: over a hundred thousand
-- jobs that was most of what counting them cost. ledger.company() is never empty, so the first half of
-- each condition was always true; the planner asked it of every row. What is left fails without a
-- company as before, on an empty table too: planning a statement asks for it.

DO $$
DECLARE
  wall record;
BEGIN
  FOR wall IN
    SELECT p.schemaname, p.tablename, CASE
      WHEN p.schemaname = 'ledger' THEN 'log_id'
      WHEN p.tablename = 'company' THEN 'id'
      ELSE 'company_id' END AS key
    FROM pg_policies p WHERE p.policyname = 'company' AND p.schemaname IN ('ledger', 'public')
  LOOP
    EXECUTE format('ALTER POLICY company ON %I.%I USING (%I = ledger.company())',
      wall.schemaname, wall.tablename, wall.key);
  END LOOP;
END $$;
