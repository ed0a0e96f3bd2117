// A private link: it opens its packet once, for one visit. The answer is signed here with the code sent
// another way and the typed name, without an account's password.

import { useParams } from '@tanstack/react-router';
import { useState, type FormEvent } from 'react';
import type { Packet } from '../api/answers.js';
import { ask, problemFrom } from '../api/client.js';
import { Cautions } from '../parts/cautions.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { day, moment } from '../parts/words.js';
import { Door, linkWords } from '../session/door.js';
import {
  AnswerFields,
  answerFaults,
  answerOf,
  answerPlace,
  answerWords,
  NO_ANSWER,
  type AnswerTyped,
} from './answer-fields.js';
import { PacketBody } from './packet-body.js';

interface Visit extends Packet {
  readonly visit: string;
}
interface Signed {
  readonly meaning: string;
  readonly at: string;
  readonly standing: string;
}

/** A visit outlives a reload of the page, and no longer than its tab. */
const keyOf = (token: string): string => `visit ${token.slice(0, 12)}`;

export function VisitPage() {
  const { token = '' } = useParams({ strict: false });
  const kept = sessionStorage.getItem(keyOf(token));
  const [visit, setVisit] = useState<Visit | null>(kept ? (JSON.parse(kept) as Visit) : null);
  const [words, setWords] = useState('');
  const [signed, setSigned] = useState<Signed | null>(null);
  const open = async () => {
    try {
      const { value } = await ask<Visit>('/packet/open', { method: 'POST', body: { token } });
      sessionStorage.setItem(keyOf(token), JSON.stringify(value));
      setVisit(value);
    } catch (error) {
      setWords(linkWords(error));
    }
  };
  if (signed) return <Done signed={signed} />;
  if (!visit)
    return (
      <Door title="A packet for you to review" failed={words !== ''}>
        <p>
          This private link opens the packet once, for one hour. Open it when you have time to read
          and answer; afterwards the office makes you a new link.
        </p>
        {words && (
          <p role="alert" className="problem">
            {words}
          </p>
        )}
        <div>
          <button type="button" className="main" onClick={() => void open()}>
            Open the packet
          </button>
        </div>
      </Door>
    );
  return (
    <Door title={`Sign-off: ${visit.body.job.surfaces.map(({ name }) => name).join(', ')}`}>
      <p>
        Job {visit.body.job.number}, {visit.body.job.name}
      </p>
      <PacketBody packet={visit} nameOf={() => 'the office'} />
      <Cautions />
      <VisitAnswer
        visit={visit}
        done={(given) => {
          sessionStorage.removeItem(keyOf(token));
          setSigned(given);
        }}
      />
    </Door>
  );
}

const Done = ({ signed }: { readonly signed: Signed }) => (
  <Door title="Your answer was recorded">
    <p role="status" className="notice ready">
      {signed.meaning}
    </p>
    <p>
      Recorded on {moment(signed.at)}. This visit is over. An approval can be revoked by you when
      you sign in; a declined request can be asked again. History keeps both.
    </p>
  </Door>
);

function VisitAnswer({
  visit,
  done,
}: {
  readonly visit: Visit;
  readonly done: (signed: Signed) => void;
}) {
  const [value, setValue] = useState<AnswerTyped>(NO_ANSWER);
  const [review, setReview] = useState(false);
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const fail = (found: FieldErrors) => {
    setErrors(found);
    setAttempt((n) => n + 1);
  };
  const set = (change: Partial<AnswerTyped>) => setValue((now) => ({ ...now, ...change }));
  if (review)
    return (
      <SignHere
        visit={visit}
        value={value}
        back={() => setReview(false)}
        failed={(found) => {
          setReview(false);
          fail(found);
        }}
        done={done}
      />
    );
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const found = answerFaults(value);
        fail(found);
        if (found.length === 0) setReview(true);
      }}
    >
      <h2>Your answer</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      <AnswerFields value={value} set={set} errors={errors} />
      <div>
        <button type="submit" className="main">
          Review your answer
        </button>
      </div>
    </form>
  );
}

/** The review: all of it in words, the code, the typed name, one explicit button. */
function SignHere({
  visit,
  value,
  back,
  failed,
  done,
}: {
  readonly visit: Visit;
  readonly value: AnswerTyped;
  readonly back: () => void;
  readonly failed: (errors: FieldErrors) => void;
  readonly done: (signed: Signed) => void;
}) {
  const [name, setName] = useState('');
  const [code, setCode] = useState('');
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const [sent, setSent] = useState('');
  const headers = { 'x-packet-visit': visit.visit };
  const send = async () => {
    try {
      await ask('/packet/code', { method: 'POST', headers });
      setSent('The code was sent to your mailbox.');
    } catch (error) {
      const { title, detail } = problemFrom(error);
      setSent(detail ?? title);
    }
  };
  const sign = async (event: FormEvent) => {
    event.preventDefault();
    const missing = [
      ...(/^\d{6}$/.test(code.trim())
        ? []
        : [{ field: 'visit-code', message: 'Enter the six digits you were given' }]),
      ...(name.trim() ? [] : [{ field: 'visit-name', message: 'Type your own name to sign' }]),
    ];
    setErrors(missing);
    setAttempt((n) => n + 1);
    if (missing.length > 0) return;
    try {
      const body = { code: code.trim(), name: name.trim(), ...answerOf(value) };
      done((await ask<Signed>('/packet/answers', { method: 'POST', body, headers })).value);
    } catch (error) {
      const problem = problemFrom(error);
      const found = errorsOf(problem, answerPlace);
      if (problem.refusals?.some(({ pointer }) => pointer && answerPlace(pointer))) failed(found);
      else setErrors(found);
      setAttempt((n) => n + 1);
    }
  };
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void sign(event)}>
      <h2>Review your answer</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      <dl className="facts">
        {answerWords(value, visit.digest).flatMap(([what, text]) => [
          <dt key={what}>{what}</dt>,
          <dd key={`${what} is`}>{text}</dd>,
        ])}
      </dl>
      <p>
        How this can be corrected: an approval can be revoked by you; a declined request can be
        asked again. History keeps both.
      </p>
      <TextField
        id="visit-code"
        label="Code for signing"
        hint="Six digits, sent another way than this link: by e-mail, or read out by phone"
        autoComplete="one-time-code"
        numeric
        errors={errors}
        value={code}
        onChange={setCode}
      />
      <div className="row">
        <button type="button" onClick={() => void send()}>
          Send me the code
        </button>
        {sent && (
          <span className="quiet" role="status">
            {sent}
          </span>
        )}
      </div>
      <TextField
        id="visit-name"
        label="Your name, typed by yourself"
        autoComplete="name"
        errors={errors}
        value={name}
        onChange={setName}
      />
      <div className="row">
        <button type="button" onClick={back}>
          Go back and change it
        </button>
        <button type="submit" className="main">
          {value.answer === 'decline' ? 'Decline' : 'Sign this answer'}
        </button>
      </div>
      <p className="quiet small">
        License as you state it, until {day(value.until) || value.until}.
      </p>
    </form>
  );
}
