// Giving several jobs to one person at once; says how many are selected, with Cancel.

import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { JobRow, JobView } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import { sendCommand } from '../api/commands.js';
import { peopleQuery } from '../api/queries.js';
import { SelectField } from '../parts/fields.js';
import { useAnnounce } from '../shell/live.js';

interface Failed {
  readonly number: string;
  readonly words: string;
}

export function BulkAssign({
  selected,
  clear,
  rows,
}: {
  readonly selected: readonly string[];
  readonly clear: () => void;
  readonly rows: readonly JobRow[];
}) {
  const client = useQueryClient();
  const say = useAnnounce();
  const people = useQuery({ ...peopleQuery, retry: false }).data?.people ?? [];
  const [person, setPerson] = useState('');
  const [failed, setFailed] = useState<readonly Failed[]>([]);
  const [busy, setBusy] = useState(false);
  if (selected.length === 0 && failed.length === 0) return null;
  const assign = async () => {
    if (busy) return;
    setBusy(true);
    const results = await Promise.all(selected.map((id) => assignOne(id, person || null)));
    const bad = results.flatMap((words, i) =>
      words === null
        ? []
        : [{ number: rows.find(({ id }) => id === selected[i])?.number ?? '', words }],
    );
    setBusy(false);
    setFailed(bad);
    say(`${results.length - bad.length} of ${results.length} jobs assigned.`);
    clear();
    await client.invalidateQueries({ queryKey: ['jobs'] });
  };
  return (
    <div className="notice stack tight" role="group" aria-label="Selected jobs">
      {selected.length > 0 && (
        <div className="row bottoms">
          <p>
            {selected.length} {selected.length === 1 ? 'job' : 'jobs'} selected
          </p>
          <SelectField
            id="assign-to"
            label="Assign to"
            empty="Nobody"
            value={person}
            options={people.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={setPerson}
          />
          <button type="button" className="main" aria-disabled={busy} onClick={() => void assign()}>
            {busy ? 'Assigning…' : 'Assign'}
          </button>
          <button type="button" onClick={clear}>
            Cancel
          </button>
        </div>
      )}
      {failed.length > 0 && (
        <div role="alert">
          <p>Not assigned:</p>
          <ul>
            {failed.map(({ number, words }) => (
              <li key={number}>
                {number}: {words}
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

/** null where it went well; else why not. */
async function assignOne(id: string, assigned: string | null): Promise<string | null> {
  try {
    const { value, version } = await ask<JobView>(`/jobs/${id}`);
    const command = { type: 'describe-job', assigned } as const;
    await sendCommand(id, command, version ?? value.version, crypto.randomUUID());
    return null;
  } catch (error) {
    const { detail, title } = problemFrom(error);
    return detail ?? title;
  }
}
