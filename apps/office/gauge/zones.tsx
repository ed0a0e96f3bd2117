// Every zone of one option: panel and attachment, inward and outward, each with source and steps.

import type { Evaluation, OptionResult } from '#jobs/contract';
import { Findings } from '../parts/findings.js';
import { PlainTable, Tag } from '../parts/table.js';
import { amount, capital, number, prose } from '../parts/words.js';
import { Steps } from '../stages/steps.js';
import { checksOf, inOrder, optionName } from './checks.js';
import { Utilization } from './comparison.js';

export function Demands({ evaluation }: { readonly evaluation: Evaluation }) {
  return (
    <section className="stack" aria-label="What each zone asks">
      <PlainTable
        caption="What each zone asks of the panel"
        note="Governing service-level loads; inward toward the surface, uplift away from it"
        columns={[
          'Zone',
          'Part',
          { name: 'Inward', num: true },
          { name: 'Uplift', num: true },
          { name: 'Support spacing', num: true },
          'Source',
        ]}
        rows={evaluation.demands.map((each) => [
          each.zone,
          capital(each.part),
          amount(each.inward),
          amount(each.outward),
          each.support_spacing ? amount(each.support_spacing) : 'solid',
          prose(each.source),
        ])}
      />
      {evaluation.demands.map((each) => (
        <Steps
          key={`${each.part} ${each.zone}`}
          title={`Zone ${each.zone}, step by step`}
          steps={each.steps}
        />
      ))}
    </section>
  );
}

export function OptionDetails({ evaluation }: { readonly evaluation: Evaluation }) {
  return (
    <section className="stack tight" aria-label="Every option, zone by zone">
      <h2>Every option, zone by zone</h2>
      {inOrder(evaluation.options).map((option) => (
        <details key={option.id}>
          <summary>{optionName(option)}</summary>
          <div className="stack">
            <Zones option={option} />
            <Findings
              findings={option.findings}
              heading={`Rules on ${optionName(option)}`}
              level={3}
            />
          </div>
        </details>
      ))}
    </section>
  );
}

function Zones({ option }: { readonly option: OptionResult }) {
  const rows = option.zones.flatMap((zone) =>
    checksOf(zone).map((check) => [
      zone.zone,
      capital(check.limit_state),
      check.direction === 'outward' ? 'uplift' : 'inward',
      amount(check.demand),
      amount(check.capacity),
      <Utilization key="u" value={check.utilization} />,
      <Tag key="p" tone={check.passes ? 'ready' : 'blocked'}>
        {check.passes ? 'Passes' : 'Fails'}
      </Tag>,
      `${prose(check.source)}${check.calculated ? ' (calculated, not tested)' : ''}`,
    ]),
  );
  const missing = option.zones.flatMap(({ zone, missing: why }) =>
    why.map((words) => `Zone ${zone}: ${words}`),
  );
  return (
    <>
      {rows.length > 0 && (
        <PlainTable
          caption={`${optionName(option)}, by zone`}
          columns={[
            'Zone',
            'Check',
            'Direction',
            { name: 'Demand', num: true },
            { name: 'Capacity', num: true },
            { name: 'Utilization', num: true },
            'Outcome',
            'Source',
          ]}
          rows={rows}
        />
      )}
      {missing.length > 0 && (
        <div>
          <p>No number where nothing gives one:</p>
          <ul>
            {missing.map((words, i) => (
              <li key={i}>{words}</li>
            ))}
          </ul>
        </div>
      )}
      {option.zones.flatMap((zone) =>
        checksOf(zone).map((check, i) => (
          <Steps
            key={`${zone.zone} ${i}`}
            title={`Zone ${zone.zone}, ${check.limit_state}, ${check.direction}`}
            steps={check.steps}
          />
        )),
      )}
      <p className="small">
        Weight {amount(option.weight)};{' '}
        {option.least_order ? `least order ${amount(option.least_order)}` : 'no least order'}; rank{' '}
        {option.rank === null ? 'none' : number(option.rank)}.
      </p>
    </>
  );
}

export function WhatWouldChange({ evaluation }: { readonly evaluation: Evaluation }) {
  if (evaluation.what_would_change.length === 0) return null;
  return (
    <section className="stack tight">
      <h2>What would change it</h2>
      <ul>
        {evaluation.what_would_change.map((each, i) => (
          <li key={i}>
            {each.words}
            {each.site_fact && ' (what if; a fact of the site is not a choice)'}
          </li>
        ))}
      </ul>
    </section>
  );
}
