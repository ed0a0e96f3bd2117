// Stands on every page, for everybody of the company, while the last verification found damage.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { Session } from '../api/answers.js';
import { healthQuery } from '../api/queries.js';
import { has } from './home.js';

const LOOK_EVERY_MS = 5 * 60_000;

export function RecordAlarm({ session }: { readonly session: Session }) {
  const found = useQuery({
    ...healthQuery,
    staleTime: LOOK_EVERY_MS,
    refetchInterval: LOOK_EVERY_MS,
    retry: false,
  }).data?.verification;
  if (found?.state !== 'damaged') return null;
  return (
    <div className="record-alarm" role="alert">
      <p>
        <strong>Alarm: the record does not hold.</strong> {found.words}{' '}
        {has(session, 'administrator') ? (
          <Link to="/admin/health">What to do</Link>
        ) : (
          'Tell your administrator now.'
        )}
      </p>
    </div>
  );
}
