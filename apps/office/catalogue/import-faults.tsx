// Every bad cell of a file: sheet, row, column, and what to do.

import { useEffect, useRef } from 'react';
import type { Problem } from '../api/answers.js';
import { PlainTable } from '../parts/table.js';
import { capital } from '../parts/words.js';

export function Faults({
  problem,
  attempt,
}: {
  readonly problem: Problem;
  readonly attempt: number;
}) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => box.current?.focus(), [attempt]);
  const faults = problem.faults ?? [];
  return (
    <div className="problem" role="alert" tabIndex={-1} ref={box} aria-labelledby="faults-title">
      <h2 id="faults-title">There is a problem</h2>
      <p>{problem.detail ?? problem.title} Nothing was recorded.</p>
      {faults.length > 0 && (
        <PlainTable
          caption="Cells to correct"
          columns={['Sheet', { name: 'Row', num: true }, 'Column', 'What is wrong']}
          rows={faults.map(({ pointer, message }) => [...placeOf(pointer), capital(message)])}
        />
      )}
    </div>
  );
}

/** "/made/row 3/price_usd" as sheet, row and column. */
function placeOf(pointer: string): readonly [string, string, string] {
  const parts = pointer.split('/').slice(1);
  const row = parts.find((each) => /^row \d+$/.test(each));
  const [sheet = 'file', column = ''] = parts.filter((each) => each !== row);
  return [sheet, row?.slice('row '.length) ?? '', column || 'the whole row'];
}
