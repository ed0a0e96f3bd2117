// The error summary: takes focus, names every fault in the words beside its field, links to each.

import { useEffect, useRef, type ReactNode } from 'react';
import type { Problem } from '../api/answers.js';
import { useNames } from '../api/queries.js';
import type { FieldError, FieldErrors } from './fields.js';
import { moment } from './words.js';

/** Faults and refusals of a problem; `place` gives the field a pointer belongs to. */
export function errorsOf(problem: Problem | null, place: (pointer: string) => string): FieldErrors {
  if (problem === null) return [];
  const faults = (problem.faults ?? []).map(({ pointer, message }): FieldError => ({
    field: place(pointer),
    message: sentence(message),
  }));
  const refusals = (problem.refusals ?? []).map(({ pointer, words }): FieldError => ({
    field: pointer ? place(pointer) : '',
    message: words,
  }));
  const all = [...faults, ...refusals];
  return all.length > 0 ? all : [{ field: '', message: problem.detail ?? problem.title }];
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export function ErrorSummary({
  errors,
  problem = null,
  attempt,
}: {
  readonly errors: FieldErrors;
  readonly problem?: Problem | null;
  /** Changes with every try, so that focus comes back here each time. */
  readonly attempt: number;
}) {
  const box = useRef<HTMLDivElement>(null);
  const shown = errors.length > 0 || (problem?.since?.length ?? 0) > 0;
  useEffect(() => {
    if (attempt > 0 && shown) box.current?.focus();
  }, [attempt, shown]);
  if (!shown) return null;
  return (
    <div className="problem" role="alert" tabIndex={-1} ref={box} aria-labelledby="problem-title">
      <h2 id="problem-title">There is a problem</h2>
      {problem?.since && problem.since.length > 0 ? (
        <Changed since={problem.since} />
      ) : (
        <ul>
          {errors.map(({ field, message }, i) => (
            <li key={i}>{field ? <FieldLink field={field}>{message}</FieldLink> : message}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function FieldLink({ field, children }: { readonly field: string; readonly children: ReactNode }) {
  return (
    <a
      href={`#${field}`}
      onClick={(event) => {
        event.preventDefault();
        const target = document.getElementById(field) ?? document.getElementById(`${field}-0`);
        target?.focus();
        target?.scrollIntoView({ block: 'center' });
      }}
    >
      {children}
    </a>
  );
}

function Changed({ since }: { readonly since: NonNullable<Problem['since']> }) {
  const nameOf = useNames(since.map(({ by }) => by));
  return (
    <>
      <p>
        Somebody changed this surface while you were working. Nothing you typed is lost: read what
        changed, look at your entries again, and save.
      </p>
      <ul>
        {since.map((each, i) => (
          <li key={i}>
            {each.words} ({nameOf(each.by)}, {moment(each.at)})
          </li>
        ))}
      </ul>
    </>
  );
}
