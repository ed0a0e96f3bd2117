// Health of the service: its version, whether the record held when it was last verified, and how far each
// list is behind it.

import { useQuery } from '@tanstack/react-query';
import { healthQuery } from '../api/queries.js';
import { Failure, Loading } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';
import { Verification } from './verification.js';

export function HealthPage() {
  const health = useQuery({ ...healthQuery, refetchInterval: 10_000 });
  const text = (n: number) => n.toLocaleString('en-US');
  return (
    <Page title="Health of the service" section="Admin">
      <AdminNav />
      {health.isPending && <Loading what="the health" />}
      {health.error && <Failure error={health.error} retry={() => void health.refetch()} />}
      {health.data && (
        <>
          <p role="status">
            <strong>{health.data.ok ? 'The service works.' : 'Something is wrong.'}</strong> Version{' '}
            {health.data.version}.
          </p>
          {health.data.verification && <Verification found={health.data.verification} />}
          <PlainTable
            caption="Lists kept from the record"
            note="Behind means entries recorded and not yet in the list"
            columns={[
              'List',
              { name: 'At position', num: true },
              { name: 'Record at', num: true },
              { name: 'Behind', num: true },
            ]}
            rows={health.data.lists.map(({ name, pos, head }) => [
              name,
              text(pos),
              text(head),
              text(Math.max(0, head - pos)),
            ])}
          />
        </>
      )}
    </Page>
  );
}
