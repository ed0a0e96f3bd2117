// The frame of the pages before sign-in.

import type { ReactNode } from 'react';
import { problemFrom } from '../api/client.js';
import { useTitle } from '../parts/title.js';
import { Mark } from '../shell/bar.js';

/** What the page of a private link says of a fault; a link cut short is no link at all. */
export function linkWords(error: unknown): string {
  const { title, detail, faults = [] } = problemFrom(error);
  if (!faults.some(({ pointer }) => pointer === '/token')) return detail ?? title;
  return 'This link is not whole: open it from the message again, or ask the office for a new one.';
}

export function Door({
  title,
  failed = false,
  children,
}: {
  readonly title: string;
  readonly failed?: boolean;
  readonly children: ReactNode;
}) {
  useTitle([title], failed);
  return (
    <>
      <header className="bar">
        <div className="bar-inside">
          <span className="product">
            <Mark />
            Gauge Ledger
          </span>
        </div>
      </header>
      <main id="main" tabIndex={-1}>
        <div className="door stack wide">
          <h1>{title}</h1>
          {children}
        </div>
      </main>
      <footer className="foot">
        <p>
          The record of every roof and wall surface: what was chosen, by whom, on which facts, and
          why that gauge.
        </p>
      </footer>
    </>
  );
}
