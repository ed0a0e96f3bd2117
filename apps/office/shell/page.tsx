// The frame of one page: where one is, its one heading, its content.

import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useTitle } from '../parts/title.js';

export interface Crumb {
  readonly name: string;
  readonly to?: string;
  readonly params?: Readonly<Record<string, string>>;
}

export function Page({
  title,
  section,
  crumbs = [],
  wide,
  failed,
  actions,
  lead,
  children,
}: {
  readonly title: string;
  readonly section?: string;
  readonly crumbs?: readonly Crumb[];
  /** Lists use the full width; everything else keeps a readable measure. */
  readonly wide?: boolean;
  readonly failed?: boolean;
  readonly actions?: ReactNode;
  readonly lead?: ReactNode;
  readonly children: ReactNode;
}) {
  useTitle([title, ...(section && section !== title ? [section] : [])], failed);
  return (
    <>
      {crumbs.length > 0 && (
        <nav className="crumbs" aria-label="Where you are">
          <ol>
            {crumbs.map((crumb) => (
              <li key={crumb.name}>
                <Link
                  to={crumb.to as '/jobs/$job'}
                  params={(crumb.params ?? {}) as { job: string }}
                >
                  {crumb.name}
                </Link>
              </li>
            ))}
            <li>
              <span aria-current="page">{title}</span>
            </li>
          </ol>
        </nav>
      )}
      <main id="main" tabIndex={-1}>
        <div className={wide ? 'stack wide' : 'content stack wide'}>
          <div className="row ends">
            <div className="stack tight">
              <h1>{title}</h1>
              {lead}
            </div>
            {actions && <div className="row no-print">{actions}</div>}
          </div>
          {children}
        </div>
      </main>
    </>
  );
}
