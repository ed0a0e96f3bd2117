// Runs before the pages' code has come: asks for what the first page needs at once, so that session,
// list and code come side by side. It decides nothing; the pages take the answers as their own.

import type { Session } from './api/answers.js';
import { begin, forgetBegun } from './api/begun.js';
import { queryOf } from './jobs/query.js';
import { homeOf } from './shell/home.js';

declare global {
  var __zod_globalConfig: { jitless?: boolean } | undefined;
}

// The pages' shapes are checked without trying whether code can be made from text: the service forbids
// that to its pages, and the browser would report the try.
globalThis.__zod_globalConfig = { jitless: true };

/** Pages before sign-in and by private link ask for no session. */
const WITHOUT_SESSION = /^\/(sign-in|packet|customer|setup)\b/;
const { pathname, search } = location;

if (!WITHOUT_SESSION.test(pathname)) void firstReads().catch(forgetBegun);

async function firstReads(): Promise<void> {
  const session = begin('/session');
  if (pathname === '/jobs') beginList(search);
  const answer = await session;
  // Nobody is signed in: what was refused must not be shown to who signs in now.
  if (!answer.ok) return forgetBegun();
  if (pathname !== '/') return;
  if (homeOf((await answer.clone().json()) as Session) === '/jobs') beginList('');
}

function beginList(filter: string): void {
  begin(`/jobs?${queryOf(Object.fromEntries(new URLSearchParams(filter)))}`);
  // A failure to load is said by the page that needs it.
  import('./jobs/job-list.js').catch(() => undefined);
}
