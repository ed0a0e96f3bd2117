-- When a stage was confirmed, so that the owner's report counts rules set aside in the days it is asked
-- for; by the same clock as the spells: a job told days later counts by the days it tells.

ALTER TABLE stage_confirmation ADD COLUMN confirmed_at TIMESTAMPTZ(6);
UPDATE stage_confirmation c
SET confirmed_at = CASE WHEN o.recorded_at - o.effective_at > interval '1 day'
  THEN e.effective_at ELSE e.recorded_at END
FROM ledger.event e, ledger.event o
WHERE e.log_id = c.company_id AND e.stream_id = 'job/' || c.job AND e.version = c.version
  AND o.log_id = c.company_id AND o.stream_id = e.stream_id AND o.version = 1;
ALTER TABLE stage_confirmation ALTER COLUMN confirmed_at SET NOT NULL;

-- A job with all six stages done and not ordered is ready, and the order is its next action.
UPDATE job_row SET state = 'Ready', next_action = 'Issue the order'
WHERE stage = 'done' AND state = 'Done';
