// A diagram with its title, its one-sentence finding and a table of the same numbers.

import type { Drawing as Picture } from '#drawings';
import { useId } from 'react';
import { PlainTable } from './table.js';
import { prose } from './words.js';

export function Drawing({ figure }: { readonly figure: Picture }) {
  const id = useId();
  return (
    <figure className="drawing stack" aria-labelledby={id}>
      <figcaption className="stack tight">
        <h2 id={id}>{figure.title}</h2>
        <p>{prose(figure.finding)}</p>
      </figcaption>
      <div
        className="sheet"
        role="region"
        aria-label={`Picture: ${figure.title}`}
        tabIndex={0}
        dangerouslySetInnerHTML={{ __html: figure.svg }}
      />
      <details>
        <summary>
          The same numbers in a table<span className="visually-hidden">: {figure.title}</span>
        </summary>
        <PlainTable
          caption={figure.title}
          columns={figure.table.columns}
          rows={figure.table.rows}
        />
      </details>
    </figure>
  );
}
