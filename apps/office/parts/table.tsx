// A native table in its own labelled, focusable region, so that the page never scrolls sideways.

import { useId, type ReactNode } from 'react';

export function ScrollTable({
  caption,
  note,
  className,
  children,
}: {
  readonly caption: string;
  readonly note?: ReactNode;
  readonly className?: string;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <div className="scroll" role="region" aria-labelledby={id} tabIndex={0}>
      <table className={className}>
        <caption id={id}>
          {caption}
          {note && <span className="small">{note}</span>}
        </caption>
        {children}
      </table>
    </div>
  );
}

/** One row of column heads, all of them words. */
export const Heads = ({ names }: { readonly names: readonly string[] }) => (
  <thead>
    <tr>
      {names.map((name) => (
        <th key={name} scope="col">
          {name}
        </th>
      ))}
    </tr>
  </thead>
);

/** A sentence keeps its width where the page is narrow; the table scrolls instead. */
const wordy = (cell: ReactNode): string | undefined =>
  typeof cell === 'string' && cell.length > 40 ? 'wordy' : undefined;

/** A table of plain text cells; columns marked `num` stand right. */
export function PlainTable({
  caption,
  columns,
  rows,
  note,
}: {
  readonly caption: string;
  readonly note?: ReactNode;
  readonly columns: readonly (string | { readonly name: string; readonly num: true })[];
  readonly rows: readonly (readonly ReactNode[])[];
}) {
  const right = columns.map((each) => typeof each !== 'string');
  return (
    <ScrollTable caption={caption} note={note}>
      <thead>
        <tr>
          {columns.map((each, i) => (
            <th key={i} scope="col" className={right[i] ? 'num' : undefined}>
              {typeof each === 'string' ? each : each.name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => (
          <tr key={i}>
            {row.map((cell, j) =>
              j === 0 ? (
                <th key={j} scope="row" className={right[j] ? 'num' : undefined}>
                  {cell}
                </th>
              ) : (
                <td key={j} className={right[j] ? 'num' : wordy(cell)}>
                  {cell}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}

export type Tone = 'ready' | 'blocked' | 'waiting' | 'plain';

/** A state in words; the color only repeats it. */
export const Tag = ({ tone, children }: { readonly tone: Tone; readonly children: ReactNode }) => (
  <span className={`tag ${tone}`}>{children}</span>
);
