// What a page shows when it has nothing to show yet: loading, empty, failed, not permitted.

import type { ReactNode } from 'react';
import { Link } from '@tanstack/react-router';
import { problemFrom } from '../api/client.js';
import { useTitle } from './title.js';

export const Loading = ({ what }: { readonly what: string }) => (
  <p className="loading" role="status">
    Loading {what}…
  </p>
);

/** Where a count is not there: whether it is still being read. */
export const counting = ({ isError }: { readonly isError: boolean }): string =>
  isError ? 'Not counted' : 'Counting…';

export const Empty = ({
  title,
  children,
}: {
  readonly title: string;
  readonly children?: ReactNode;
}) => (
  <div className="sheet stack tight">
    <h2>{title}</h2>
    {children}
  </div>
);

interface Failed {
  readonly error: unknown;
  readonly retry?: () => void;
}

/** A page whose whole reading failed. */
export function FailedPage(failed: Failed) {
  const [heading] = wordsOf(failed.error);
  useTitle([heading]);
  return (
    <main id="main" tabIndex={-1}>
      <div className="content">
        <Failure {...failed} level={1} />
      </div>
    </main>
  );
}

/** A read that failed: says what, and what to do. */
export function Failure({ error, retry, level = 2 }: Failed & { readonly level?: 1 | 2 }) {
  const { status, detail } = problemFrom(error);
  const [heading, words] = wordsOf(error);
  const H = level === 1 ? 'h1' : 'h2';
  return (
    <div className="sheet stack" role="alert">
      <H>{heading}</H>
      <p>{status === 403 ? (detail ?? words) : words}</p>
      <div className="row">
        {retry && status !== 403 && status !== 404 && (
          <button type="button" className="main" onClick={retry}>
            Try again
          </button>
        )}
        <Link to="/jobs" className="button">
          Go to the jobs
        </Link>
      </div>
    </div>
  );
}

function wordsOf(error: unknown): readonly [string, string] {
  const { status, title, detail } = problemFrom(error);
  return WORDS[status] ?? [title, detail ?? 'Try again in a moment.'];
}

const WORDS: Readonly<Record<number, readonly [string, string]>> = {
  0: ['No connection', 'The service did not answer. Check the connection and try again.'],
  401: ['You are not signed in', 'Sign in to see this page.'],
  403: [
    'You may not see this page',
    'Your role does not include it. The administrator of your company can change roles.',
  ],
  404: [
    'Not found',
    'There is nothing at this address, or it belongs to another company. Check the address.',
  ],
};
