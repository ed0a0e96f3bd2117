// A private link to the packet, for an engineer who should not have to find the way through the office.

import { useState } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { day } from '../parts/words.js';

interface Made {
  readonly token: string;
  readonly expires_at: string;
}

export function MakeLink({ job, request }: { readonly job: string; readonly request: string }) {
  const [made, setMade] = useState<Made | null>(null);
  const [words, setWords] = useState('');
  const make = async () => {
    try {
      const path = `/jobs/${job}/requests/${request}/links`;
      setMade((await ask<Made>(path, { method: 'POST', body: {} })).value);
      setWords('');
    } catch (error) {
      const { title, detail } = problemFrom(error);
      setWords(detail ?? title);
    }
  };
  return (
    <section className="sheet stack">
      <h2>Private link</h2>
      <p>
        A link opens this packet once, for one visit, without signing in. The code for signing goes
        another way: by e-mail, or read out by somebody who did not make the link.
      </p>
      {words && (
        <p role="alert" className="problem">
          {words}
        </p>
      )}
      {made ? (
        <p role="status" className="notice">
          Send this to the engineer; it is shown once and ends on {day(made.expires_at)}:{' '}
          <span className="digest">{`${window.location.origin}/packet/${made.token}`}</span>
        </p>
      ) : (
        <div>
          <button type="button" onClick={() => void make()}>
            Make a private link
          </button>
        </div>
      )}
    </section>
  );
}
