// A private link for the customer, to issued papers of the job that are chosen here.

import { useState } from 'react';
import type { JobView } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import { CheckField } from '../parts/fields.js';
import { day } from '../parts/words.js';

interface Choice {
  readonly paper: string;
  readonly about: string;
  readonly name: string;
}
interface Made {
  readonly token: string;
  readonly expires_at: string;
}

export function CustomerLink({
  job,
  papers,
}: {
  readonly job: JobView;
  readonly papers: readonly Choice[];
}) {
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [made, setMade] = useState<Made | null>(null);
  const [words, setWords] = useState('');
  const make = async () => {
    const sent = papers.filter(({ name }) => chosen.includes(name));
    if (sent.length === 0) return setWords('Choose at least one paper');
    try {
      const body = { papers: sent.map(({ paper, about }) => ({ paper, about })) };
      setMade((await ask<Made>(`/jobs/${job.id}/customer-links`, { method: 'POST', body })).value);
      setWords('');
    } catch (error) {
      const { title, detail } = problemFrom(error);
      setWords(detail ?? title);
    }
  };
  return (
    <details>
      <summary>Send papers to the customer</summary>
      <div className="stack">
        {words && (
          <p role="alert" className="problem">
            {words}
          </p>
        )}
        <CheckField
          id="customer-papers"
          label="Papers to send"
          hint="The customer reads them by a private link and can say that they were seen"
          options={papers.map(({ name }) => ({ value: name, label: name }))}
          values={chosen}
          onChange={setChosen}
        />
        <div>
          <button type="button" onClick={() => void make()}>
            Make a link for the customer
          </button>
        </div>
        {made && (
          <p role="status" className="notice">
            Send this to the customer; it is shown once and ends on {day(made.expires_at)}:{' '}
            <span className="digest">{`${window.location.origin}/customer/${made.token}`}</span>
          </p>
        )}
      </div>
    </details>
  );
}
