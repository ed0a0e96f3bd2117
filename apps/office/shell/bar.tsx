// The slim top bar: product, sections, the person.

import { Link } from '@tanstack/react-router';
import { lazy, Suspense, useRef, useState } from 'react';
import type { Session } from '../api/answers.js';
import { ask, problemFrom } from '../api/client.js';
import { unsaved } from '../parts/draft.js';
import { Dialog } from '../parts/dialog.js';
import { forgetPhone } from '../phone/without-signal.js';
import { has, OFFICE } from './home.js';

const SECTIONS = [
  {
    to: '/jobs',
    name: 'Jobs',
    roles: [...OFFICE, 'warranty-reviewer', 'crew-lead', 'administrator'],
  },
  { to: '/sign-offs', name: 'Sign-off queue', roles: [...OFFICE, 'engineer'] },
  { to: '/spanning', name: 'Spanning', roles: ['project-manager'] },
  { to: '/reminders', name: 'Reminders', roles: OFFICE },
  { to: '/report', name: 'Report', roles: ['project-manager', 'administrator'] },
  { to: '/decisions', name: 'Decisions', roles: [...OFFICE, 'warranty-reviewer', 'administrator'] },
  { to: '/admin/readings', name: 'Who read what', roles: ['warranty-reviewer'] },
  { to: '/rules', name: 'Rules', roles: 'all' },
  { to: '/catalogue', name: 'Catalogue', roles: [...OFFICE, 'standards-manager'] },
  { to: '/phone', name: 'On the roof', roles: ['crew-lead'] },
  { to: '/admin', name: 'Admin', roles: ['administrator'] },
] as const;

export function Bar({ session }: { readonly session: Session }) {
  const mine = SECTIONS.filter(({ roles }) => roles === 'all' || has(session, ...roles));
  return (
    <header className="bar">
      <div className="bar-inside">
        <Link to="/" className="product">
          <Mark />
          Gauge Ledger
        </Link>
        <nav aria-label="Sections">
          <ul>
            {mine.map(({ to, name }) => (
              <li key={to}>
                <Link to={to}>{name}</Link>
              </li>
            ))}
          </ul>
        </nav>
        <div className="person">
          <Person session={session} />
        </div>
      </div>
    </header>
  );
}

export const Mark = () => (
  <svg viewBox="0 0 32 32" aria-hidden="true">
    <path
      d="M1 25h6V9h3v16h12V9h3v16h6"
      fill="none"
      stroke="currentColor"
      strokeWidth="3"
      strokeLinejoin="round"
    />
  </svg>
);

export const loadPersonMenu = () => import('./person-menu.js');
const PersonMenu = lazy(loadPersonMenu);

function Person({ session }: { readonly session: Session }) {
  const button = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  const [asking, setAsking] = useState<'no' | 'unsaved' | 'offline'>('no');
  const leave = async () => {
    const still = await ask('/session', { method: 'DELETE' }).then(
      () => false,
      (error: unknown) => problemFrom(error).status === 0,
    );
    if (still) return setAsking('offline');
    sessionStorage.clear();
    await forgetPhone();
    // A new page: nothing that was read stays in memory.
    location.assign('/sign-in');
  };
  const leaveOrAsk = () => {
    if (unsaved()) setAsking('unsaved');
    else void leave();
  };
  return (
    <>
      <button
        ref={button}
        type="button"
        aria-haspopup="menu"
        aria-expanded={open}
        onClick={() => setOpen(true)}
      >
        {session.person.name}
      </button>
      {open && (
        <Suspense>
          <PersonMenu
            session={session}
            button={button}
            close={() => setOpen(false)}
            leave={leaveOrAsk}
          />
        </Suspense>
      )}
      <Dialog
        title="Sign out with unsaved work?"
        open={asking === 'unsaved'}
        close={() => setAsking('no')}
      >
        <p>You typed something that is not saved. Signing out throws it away.</p>
        <div className="row">
          <button type="button" onClick={() => setAsking('no')}>
            Stay signed in
          </button>
          <button type="button" className="danger" onClick={() => void leave()}>
            Sign out and throw it away
          </button>
        </div>
      </Dialog>
      <Dialog
        title="You are still signed in"
        open={asking === 'offline'}
        close={() => setAsking('no')}
      >
        <p>The service did not answer. Sign out again when you are connected.</p>
        <div className="row">
          <button type="button" className="main" onClick={() => setAsking('no')}>
            Close
          </button>
        </div>
      </Dialog>
    </>
  );
}
