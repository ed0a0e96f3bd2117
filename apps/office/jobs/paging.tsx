// "101 to 200 of 4,312" and links to the pages around this one.

import { Link } from '@tanstack/react-router';
import type { Filter } from './query.js';

export function Paging({
  total,
  page,
  size,
  filter,
}: {
  readonly total: number;
  readonly page: number;
  readonly size: number;
  readonly filter: Filter;
}) {
  const last = Math.max(1, Math.ceil(total / size));
  const from = total === 0 ? 0 : (page - 1) * size + 1;
  const to = Math.min(total, page * size);
  const near = [...new Set([1, page - 1, page, page + 1, last])].filter((n) => n >= 1 && n <= last);
  const text = (n: number) => n.toLocaleString('en-US');
  return (
    <nav className="pages" aria-label="Pages of the list">
      <p>{`${text(from)} to ${text(to)} of ${text(total)}`}</p>
      {last > 1 && (
        <ul>
          {near.map((n) => (
            <li key={n}>
              {n === page ? (
                <span className="here" aria-current="page">
                  {text(n)}
                </span>
              ) : (
                <Link
                  to="/jobs"
                  search={{ ...filter, page: String(n) } as Record<string, string>}
                  aria-label={`Page ${text(n)}`}
                >
                  {text(n)}
                </Link>
              )}
            </li>
          ))}
        </ul>
      )}
    </nav>
  );
}
