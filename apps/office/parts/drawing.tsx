// A diagram with its title, its one-sentence finding and a table of the same numbers.

import { useId } from 'react';
import { PlainTable } from './table.js';

export interface Figure {
  /** SVG text made by #drawings, with its own title and description. */
  readonly svg: string;
  readonly title: string;
  readonly finding: string;
  readonly table: {
    readonly columns: readonly (string | { readonly name: string; readonly num: true })[];
    readonly rows: readonly (readonly string[])[];
  };
}

export function Drawing({ figure }: { readonly figure: Figure }) {
  const id = useId();
  return (
    <figure className="drawing stack" aria-labelledby={id}>
      <figcaption className="stack tight">
        <h3 id={id}>{figure.title}</h3>
        <p>{figure.finding}</p>
      </figcaption>
      <div className="sheet" dangerouslySetInnerHTML={{ __html: figure.svg }} />
      <details>
        <summary>The same numbers in a table</summary>
        <PlainTable caption={figure.title} {...figure.table} />
      </details>
    </figure>
  );
}
