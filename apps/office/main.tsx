// The pages start here: one store for what is read, one router, one status region.

import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { ServiceProblem } from './api/client.js';
import { makeRouter } from './routes.js';
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
const place = document.getElementById('office');
if (place === null) throw new Error('The page has no place for the office.');
createRoot(place).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <LiveRegion>
        <RouterProvider router={makeRouter(client)} />
      </LiveRegion>
    </QueryClientProvider>
  </StrictMode>,
);
