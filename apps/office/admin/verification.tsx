// The last verification of the whole record in words, the one under way, those before; and a run now.

import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { ask, problemFrom } from '../api/client.js';
import type { Verification as Found, VerificationRun } from '../api/answers.js';
import { runsQuery } from '../api/log.js';
import { healthQuery, useNames } from '../api/queries.js';
import { PlainTable, Tag } from '../parts/table.js';
import { moment } from '../parts/words.js';

const count = (n: number) => n.toLocaleString('en-US');

export function Verification({ found }: { readonly found: Found }) {
  const runs = useQuery({ ...runsQuery, refetchInterval: 10_000 });
  const past = (runs.data ?? []).filter(({ finished_at }) => finished_at !== null);
  const nameOf = useNames(past.flatMap(({ asked_by }) => asked_by ?? []));
  return (
    <section className="stack" aria-labelledby="verification-title">
      <h2 id="verification-title">Verification of the whole record</h2>
      <div className={`notice ${TONES[stateOf(found)]} stack tight`} role="status">
        <p>
          <strong>{HEADINGS[stateOf(found)]}</strong>
        </p>
        <p>{found.words}</p>
        {found.last?.finished_at && <p>Last finished {moment(found.last.finished_at)}.</p>}
        {found.state === 'damaged' && (
          <p>
            Copy the database before anybody repairs or restores it, keep every checkpoint on paper
            and in mail, and give no evidence out until it is clear what happened.
          </p>
        )}
        {found.running && <UnderWay run={found.running} />}
      </div>
      <RunNow running={found.running !== null} />
      {past.length > 0 && (
        <PlainTable
          caption="Runs so far"
          note="Newest first; each night one, and those that were asked for"
          columns={[
            'Finished',
            'Found',
            { name: 'Positions', num: true },
            { name: 'Held to checkpoint of', num: true },
            { name: 'First bad position', num: true },
            'What was wrong',
            'Asked by',
          ]}
          rows={past.map((run) => [
            moment(run.finished_at),
            run.result === 'damaged' ? (
              <Tag key="r" tone="blocked">
                Does not hold
              </Tag>
            ) : (
              <Tag key="r" tone="ready">
                Holds
              </Tag>
            ),
            count(run.positions),
            run.checkpoint === null ? 'none kept' : count(run.checkpoint),
            run.first_bad?.position ? count(run.first_bad.position) : '',
            run.first_bad?.says ?? '',
            run.asked_by === null ? 'nightly' : nameOf(run.asked_by),
          ])}
        />
      )}
    </section>
  );
}

type State = 'sound' | 'damaged' | 'never' | 'overdue';
const stateOf = ({ state, overdue }: Found): State =>
  state === 'sound' && overdue ? 'overdue' : state;

const HEADINGS: Readonly<Record<State, string>> = {
  sound: 'The record holds.',
  damaged: 'Alarm: the record does not hold.',
  never: 'Not verified yet.',
  overdue: 'The record held, but it was not verified for more than 36 hours.',
};
const TONES: Readonly<Record<State, string>> = {
  sound: 'ready',
  damaged: 'blocked',
  never: 'waiting',
  overdue: 'waiting',
};

const UnderWay = ({ run }: { readonly run: VerificationRun }) => (
  <p>
    A run began {moment(run.started_at)}: {count(run.positions)} positions so far
    {run.of > 0 ? ` of ${count(run.of)}` : ''}. {run.trouble}
  </p>
);

function RunNow({ running }: { readonly running: boolean }) {
  const client = useQueryClient();
  const run = useMutation({
    mutationFn: () => ask('/log/verifications', { method: 'POST', body: {} }),
    onSuccess: () => client.invalidateQueries({ queryKey: healthQuery.queryKey }),
  });
  return (
    <div className="stack tight">
      <div>
        <button
          type="button"
          aria-disabled={running || run.isPending}
          onClick={() => {
            if (!running && !run.isPending) run.mutate();
          }}
        >
          {running ? 'A run is under way' : 'Verify the record now'}
        </button>
      </div>
      {run.error && (
        <p role="alert">{problemFrom(run.error).detail ?? problemFrom(run.error).title}</p>
      )}
    </div>
  );
}
