// What was sent to a customer, by a private link: to read, and to acknowledge having seen it.

import { useParams } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { label } from '#jobs/contract';
import { ask, askBytes } from '../api/client.js';
import { TextField } from '../parts/fields.js';
import { Loading } from '../parts/states.js';
import { capital, day } from '../parts/words.js';
import { Door, linkWords } from './door.js';

interface Paper {
  readonly paper: string;
  readonly about: string;
  readonly acknowledged_at: string | null;
}
interface Sent {
  readonly job: { readonly number: string; readonly name: string };
  readonly company: string;
  readonly caution: string;
  readonly papers: readonly Paper[];
}

export function CustomerPage() {
  const { token = '' } = useParams({ strict: false });
  const [sent, setSent] = useState<Sent | null>(null);
  const [words, setWords] = useState('');
  const said = (error: unknown) => setWords(linkWords(error));
  const load = async () =>
    setSent((await ask<Sent>('/customer/open', { method: 'POST', body: { token } })).value);
  useEffect(() => {
    load().catch(said);
  }, [token]);
  if (!sent)
    return (
      <Door title="Papers for you" failed={words !== ''}>
        {words ? (
          <p role="alert" className="problem">
            {words}
          </p>
        ) : (
          <Loading what="your papers" />
        )}
      </Door>
    );
  return (
    <Door title={`Papers from ${sent.company}`}>
      <p>
        Job {sent.job.number}, {sent.job.name}
      </p>
      <p className="notice">{sent.caution}</p>
      {words && (
        <p role="alert" className="problem">
          {words}
        </p>
      )}
      {sent.papers.map((paper) => (
        <OnePaper
          key={`${paper.paper} ${paper.about}`}
          token={token}
          paper={paper}
          done={() => void load().catch(said)}
          failed={said}
        />
      ))}
    </Door>
  );
}

function OnePaper({
  token,
  paper: { paper, about, acknowledged_at },
  done,
  failed,
}: {
  readonly token: string;
  readonly paper: Paper;
  readonly done: () => void;
  readonly failed: (error: unknown) => void;
}) {
  const [name, setName] = useState('');
  const [missing, setMissing] = useState(false);
  const id = `name-${paper}-${about}`;
  const title = `${capital(label(paper))} ${about}`;
  const read = async () => {
    try {
      const bytes = await askBytes('/customer/paper', { token, paper, about });
      window.open(URL.createObjectURL(bytes), '_blank');
    } catch (error) {
      failed(error);
    }
  };
  const acknowledge = async () => {
    setMissing(!name.trim());
    if (!name.trim()) return;
    try {
      const body = { token, paper, about, name: name.trim() };
      await ask('/customer/acknowledge', { method: 'POST', body });
      done();
    } catch (error) {
      failed(error);
    }
  };
  return (
    <section className="sheet stack" aria-label={title}>
      <h2>{title}</h2>
      <div>
        <button type="button" onClick={() => void read()}>
          Read it<span className="visually-hidden">: {title}</span>
        </button>
      </div>
      {acknowledged_at ? (
        <p role="status">Acknowledged on {day(acknowledged_at)}.</p>
      ) : (
        <>
          <TextField
            id={id}
            label="Your name, to say that you have seen it"
            autoComplete="name"
            errors={missing ? [{ field: id, message: 'Type your name' }] : []}
            value={name}
            onChange={setName}
          />
          <div>
            <button type="button" className="main" onClick={() => void acknowledge()}>
              I have seen it<span className="visually-hidden">: {title}</span>
            </button>
          </div>
        </>
      )}
    </section>
  );
}
