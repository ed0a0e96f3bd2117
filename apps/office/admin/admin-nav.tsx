// The parts of the administration, as links beside each other.

import { Link } from '@tanstack/react-router';

const PARTS = [
  { to: '/admin', name: 'People' },
  { to: '/admin/company', name: 'Company' },
  { to: '/admin/keys', name: 'Keys' },
  { to: '/admin/backups', name: 'Backups' },
  { to: '/admin/health', name: 'Health' },
  { to: '/admin/readings', name: 'Who read what' },
  { to: '/admin/disposal', name: 'Erasure and holds' },
  { to: '/admin/feed', name: 'Feed' },
] as const;

export const AdminNav = () => (
  <nav aria-label="Administration" className="parts-of">
    <ul>
      {PARTS.map(({ to, name }) => (
        <li key={to}>
          <Link to={to} activeOptions={{ exact: true }}>
            {name}
          </Link>
        </li>
      ))}
    </ul>
  </nav>
);
