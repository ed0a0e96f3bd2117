// Checking a chart file: every fault by row and column, or the charts as they were read. Nothing is
// recorded.

import { useState } from 'react';
import type { LoadChart } from '#jobs/contract';
import type { Fault } from '../api/answers.js';
import { ask, problemFrom } from '../api/client.js';
import { PlainTable } from '../parts/table.js';
import { ChartTable } from './capacities.js';

type State =
  | { readonly is: 'idle' | 'reading' }
  | { readonly is: 'read'; readonly charts: readonly LoadChart[] }
  | { readonly is: 'faulty'; readonly words: string; readonly faults: readonly Fault[] };

export function ChartCheck() {
  const [state, setState] = useState<State>({ is: 'idle' });
  const check = async (file: File | undefined) => {
    if (!file) return;
    setState({ is: 'reading' });
    try {
      const raw = { bytes: await file.text(), type: 'text/csv' };
      const { value } = await ask<{ charts: readonly LoadChart[] }>('/catalogue/charts/check', {
        method: 'POST',
        raw,
      });
      setState({ is: 'read', charts: value.charts });
    } catch (error) {
      const { title, detail, faults = [] } = problemFrom(error);
      setState({ is: 'faulty', words: detail ?? title, faults });
    }
  };
  return (
    <section className="stack" aria-labelledby="check-title">
      <h2 id="check-title">Check a chart file</h2>
      <div className="field">
        <label htmlFor="chart-file">Load charts, CSV</label>
        <span className="hint" id="chart-file-hint">
          Only checked here; a new edition takes them in
        </span>
        <input
          id="chart-file"
          type="file"
          accept=".csv,text/csv"
          aria-describedby="chart-file-hint"
          onChange={(event) => void check(event.target.files?.[0])}
        />
      </div>
      <p role="status">
        {state.is === 'reading'
          ? 'Reading…'
          : state.is === 'read'
            ? `${state.charts.length} charts read, no fault.`
            : state.is === 'faulty'
              ? state.words
              : ''}
      </p>
      {state.is === 'faulty' && state.faults.length > 0 && (
        <PlainTable
          caption="Faults of the file"
          columns={['Where', 'What to do']}
          rows={state.faults.map(({ pointer, message }) => [
            pointer.slice(1).replace('/', ', column '),
            message,
          ])}
        />
      )}
      {state.is === 'read' &&
        state.charts.map((chart) => <ChartTable key={chart.id} chart={chart} />)}
    </section>
  );
}
