// The frame of the pages before sign-in.

import type { ReactNode } from 'react';
import { useTitle } from '../parts/title.js';
import { Mark } from '../shell/bar.js';

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
