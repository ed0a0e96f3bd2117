// Names and what stands for them, one below the other.

import { Fragment, type ReactNode } from 'react';

export const FactTable = ({
  rows,
}: {
  readonly rows: readonly (readonly [name: string, value: ReactNode])[];
}) => (
  <dl className="facts">
    {rows.map(([name, value]) => (
      <Fragment key={name}>
        <dt>{name}</dt>
        <dd>{value}</dd>
      </Fragment>
    ))}
  </dl>
);
