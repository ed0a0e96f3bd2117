// Editions in a table: number, state, from when, what changed.

import { Link } from '@tanstack/react-router';
import type { EditionRow } from '../api/answers.js';
import { Heads, ScrollTable } from './table.js';
import { day } from './words.js';

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
      <Heads names={['Edition', 'State', 'In force from', 'Summary']} />
      <tbody>
        {rows.map((row) => (
          <tr key={row.number}>
            <th scope="row">
              <Link className="row-link" to={to} params={{ edition: String(row.number) }}>
                Edition {row.number}
              </Link>
            </th>
            <td>{editionState(row)}</td>
            <td>{day(row.in_force_from)}</td>
            <td>{row.summary}</td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}

/** "In force since 1 Oct 2026", "Published, in force from 1 Jan 2027", "Retired on 1 Oct 2026". */
export function editionState({ state, in_force_from, retired_on }: EditionRow): string {
  if (state === 'in force') return `In force since ${day(in_force_from)}`;
  if (state === 'in force later') return `Published, in force from ${day(in_force_from)}`;
  return retired_on ? `Retired on ${day(retired_on)}` : 'Retired';
}
