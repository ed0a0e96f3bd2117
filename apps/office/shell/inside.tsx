// Everything behind sign-in: the bar, where one is, the page, the help line; and the session's end.

import { useQuery } from '@tanstack/react-query';
import {
  Link,
  Navigate,
  Outlet,
  useLocation,
  useNavigate,
  useRouterState,
} from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import { problemFrom } from '../api/client.js';
import { sessionQuery } from '../api/queries.js';
import { FailedPage, Loading } from '../parts/states.js';
import { useTitle } from '../parts/title.js';
import { Bar } from './bar.js';
import { RecordAlarm } from './record-alarm.js';
import { SessionWatch } from './session-watch.js';
import { homeOf } from './home.js';

export function Inside() {
  const session = useQuery(sessionQuery);
  if (session.isPending) return <Loading what="your session" />;
  if (session.data === undefined) {
    if (problemFrom(session.error).status === 401) return <ToSignIn />;
    return <FailedPage error={session.error} retry={() => void session.refetch()} />;
  }
  return (
    <>
      <SkipLink />
      <Bar session={session.data} />
      <RecordAlarm session={session.data} />
      <FocusOnMove />
      <Outlet />
      <Foot company={session.data.company.id} />
      <SessionWatch session={session.data} />
    </>
  );
}

/** Goes once, with where one was: while the way there is loading, the address is sign-in's already. */
function ToSignIn() {
  const navigate = useNavigate();
  const [from] = useState(useLocation().href);
  useEffect(() => {
    void navigate({ to: '/sign-in', search: from === '/' ? {} : { next: from }, replace: true });
  }, [navigate, from]);
  return <Loading what="sign-in" />;
}

export function Home() {
  const session = useQuery(sessionQuery);
  return <Navigate to={homeOf(session.data)} replace />;
}

export const SkipLink = () => (
  <a
    className="skip"
    href="#main"
    onClick={(event) => {
      event.preventDefault();
      document.getElementById('main')?.focus();
    }}
  >
    Skip to the page
  </a>
);

/** After moving to another page the focus goes to its main part, so that reading starts there. */
function FocusOnMove() {
  const path = useRouterState({ select: ({ resolvedLocation }) => resolvedLocation?.pathname });
  const first = useRef(true);
  useEffect(() => {
    if (path === undefined) return;
    if (first.current) first.current = false;
    else document.getElementById('main')?.focus({ preventScroll: true });
  }, [path]);
  return null;
}

/** Companies of the demonstration, by the ids that filling gives them. */
const INVENTED: Readonly<Record<string, string>> = {
  demonstration: 'This company, its jobs and its people are invented, for demonstration.',
  'demonstration-large':
    'This company, its jobs and its people are invented, for demonstration. Its nine years are simulated: the day from which an entry counts is told; when it was recorded is when the demonstration was made.',
};

const Foot = ({ company }: { readonly company: string }) => (
  <footer className="foot">
    {INVENTED[company] && <p>{INVENTED[company]}</p>}
    <p>
      An office aid: local code and the authority having jurisdiction govern; a licensed engineer
      decides what spans. <Link to="/help">Help</Link>
    </p>
  </footer>
);

export function NotFound() {
  useTitle(['Not found']);
  return (
    <main id="main" tabIndex={-1}>
      <div className="content stack">
        <h1>There is no page at this address</h1>
        <p>Check the address, or start from the jobs.</p>
        <p>
          <Link to="/jobs">Go to the jobs</Link>
        </p>
      </div>
    </main>
  );
}
