// The columns of a file of jobs, and an empty file to fill in.

import { PlainTable } from '../parts/table.js';

const COLUMNS: readonly (readonly [string, string, string])[] = [
  ['number', 'needed', 'The number of the job; not in use yet'],
  ['name', 'needed', 'How the office calls it'],
  ['customer', 'needed', 'Name of the customer'],
  ['customer_phone', 'may be empty', ''],
  ['customer_email', 'may be empty', ''],
  ['site', 'needed', 'Name of the site'],
  ['address', 'may be empty', 'Address of the site'],
  ['due', 'may be empty', 'Like 2026-02-14'],
  ['jurisdiction', 'may be empty', 'State or territory, two letters'],
  ['building', 'may be empty', 'Name of the building; “Main building” where empty'],
  ['surfaces', 'may be empty', 'Each with its kind, like: South: roof; North wall: wall'],
];

const EMPTY = `data:text/csv;charset=utf-8,${encodeURIComponent(`${COLUMNS.map(([name]) => name).join(',')}\r\n`)}`;

export const ImportColumns = () => (
  <details>
    <summary>The columns of the file</summary>
    <div className="stack">
      <PlainTable
        caption="Columns"
        note="The first row names them, in any order"
        columns={['Column', 'Needed', 'What it holds']}
        rows={COLUMNS.map(([name, needed, words]) => [
          <code key={name}>{name}</code>,
          needed,
          words,
        ])}
      />
      <p>
        <a href={EMPTY} download="jobs.csv">
          Download a file with these columns
        </a>
      </p>
    </div>
  </details>
);
