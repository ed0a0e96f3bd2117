// Editions in a table: number, state, from when, what changed.

import { Link } from '@tanstack/react-router';
import type { EditionRow } from '../api/answers.js';
import { ScrollTable } from './table.js';
import { capital, day } from './words.js';

export function EditionTable({
  caption,
  to,
  rows,
}: {
  readonly caption: string;
  readonly to: '/rules/$edition' | '/catalogue/$edition';
  readonly rows: readonly EditionRow[];
}) {
  return (
    <ScrollTable caption={caption}>
      <thead>
        <tr>
          {['Edition', 'State', 'In force from', 'Summary'].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.number}>
            <th scope="row">
              <Link className="row-link" to={to} params={{ edition: String(row.number) }}>
                Edition {row.number}
              </Link>
            </th>
            <td>{capital(row.state ?? 'published')}</td>
            <td>{day(row.in_force_from)}</td>
            <td>{row.summary}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}
