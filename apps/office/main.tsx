// The pages start here: one store for what is read, one router, one status region.

import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { hasBegun } from './api/begun.js';
import { ServiceProblem } from './api/client.js';
import { sessionQuery } from './api/queries.js';
import { loadModal } from './parts/dialog.js';
import { makeRouter } from './routes.js';
import { loadPersonMenu } from './shell/bar.js';
import { LiveRegion } from './shell/live.js';
import { applyLook } from './shell/look.js';

const client = new QueryClient({
  defaultOptions: {
    queries: {
      retry: (tries, error) =>
        tries < 2 && error instanceof ServiceProblem && error.problem.status === 0,
      refetchOnWindowFocus: false,
      staleTime: 5_000,
      networkMode: 'always',
    },
    mutations: { networkMode: 'always' },
  },
});

applyLook();
const router = makeRouter(client);
// What comes at once is drawn once: a page that waits is shown only where something takes longer.
const session = hasBegun('/session') ? client.prefetchQuery(sessionQuery) : undefined;
const ready = Promise.allSettled([router.load(), session]);
await Promise.race([ready, new Promise((resolve) => setTimeout(resolve, 400))]);
const place = document.getElementById('office');
if (place === null) throw new Error('The page has no place for the office.');
createRoot(place).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <LiveRegion>
        <RouterProvider router={router} />
      </LiveRegion>
    </QueryClientProvider>
  </StrictMode>,
);

// What opens over a page is there before it is asked for, also when the network is gone by then.
addEventListener('load', () =>
  setTimeout(() => void Promise.allSettled([loadModal(), loadPersonMenu()]), 2000),
);
