// A calculation as it is kept: each step's symbol, value, formula and clause, folded.

import { citationText } from '#engineering';
import type { StepRecord } from '#jobs/contract';
import { PlainTable } from '../parts/table.js';
import { number, unit } from '../parts/words.js';

export function Steps({
  title,
  steps,
}: {
  readonly title: string;
  readonly steps: readonly StepRecord[];
}) {
  if (steps.length === 0) return null;
  return (
    <details>
      <summary>{title}</summary>
      <PlainTable
        caption={title}
        columns={['Symbol', { name: 'Value', num: true }, 'Unit', 'Formula', 'Source']}
        rows={steps.map((each) => [
          each.symbol,
          number(each.value),
          unit(each.unit),
          each.formula,
          citationText(each.cite),
        ])}
      />
    </details>
  );
}
