// The comparison of gauges: for each its governing check, demand, capacity, utilization, outcome in
// words, and why not.

import type { Evaluation, OptionResult } from '#jobs/contract';
import { ScrollTable, Tag } from '../parts/table.js';
import { amount, capital, prose } from '../parts/words.js';
import { governingCheck, inOrder, optionName, outcomeWords } from './checks.js';

interface Pick {
  readonly chosen: string;
  readonly pick: (option: string) => void;
}

export function Comparison({
  evaluation,
  picking,
  chosen,
}: {
  readonly evaluation: Evaluation;
  /** Present where a person is choosing. */
  readonly picking?: Pick | undefined;
  /** The option that was taken, where the choice is made. */
  readonly chosen?: string | undefined;
}) {
  const options = inOrder(evaluation.options);
  return (
    <section className="stack" aria-label="Comparison of gauges">
      <p>
        <strong>{evaluation.recommendation.sentence}</strong>
      </p>
      <ScrollTable
        caption="Comparison of gauges"
        note="Every thickness the catalogue offers for this profile"
      >
        <thead>
          <tr>
            {picking && <th scope="col">Take</th>}
            <th scope="col">Gauge, base thickness, outcome</th>
            <th scope="col">Governing check</th>
            <th scope="col" className="num">
              Demand
            </th>
            <th scope="col" className="num">
              Capacity
            </th>
            <th scope="col" className="num">
              Utilization
            </th>
            <th scope="col" className="num">
              Weight
            </th>
            <th scope="col" className="num">
              Price
            </th>
            <th scope="col" className="num">
              Lead, days
            </th>
          </tr>
        </thead>
        <tbody>
          {options.map((option) => (
            <Row
              key={option.id}
              option={option}
              recommended={evaluation.recommendation.option}
              taken={chosen}
              {...(picking ? { picking } : {})}
            />
          ))}
        </tbody>
      </ScrollTable>
      <p className="quiet small">Ranked by: {evaluation.ranking.by.replace(/\.$/, '')}.</p>
    </section>
  );
}

function Row({
  option,
  recommended,
  picking,
  taken,
}: {
  readonly option: OptionResult;
  readonly recommended: string | null;
  readonly picking?: Pick;
  readonly taken?: string | undefined;
}) {
  const check = governingCheck(option);
  const outcome = outcomeWords(option, recommended);
  const look = taken === option.id ? 'chosen' : option.admissible ? '' : 'ruled-out';
  return (
    <>
      <tr className={look}>
        {picking && (
          <td>
            {option.admissible && (
              <input
                type="radio"
                name="option"
                id={`option-${option.id}`}
                aria-label={`Take ${optionName(option)}`}
                checked={picking.chosen === option.id}
                onChange={() => picking.pick(option.id)}
              />
            )}
          </td>
        )}
        <th scope="row">
          {optionName(option)}
          <br />
          <Tag tone={outcome.tone}>
            {outcome.words}
            {taken === option.id && ', taken'}
          </Tag>
        </th>
        <td className="words">
          {option.governs
            ? `${capital(option.governs.limit_state)}, zone ${option.governs.zone}`
            : 'no number'}
          {check && (
            <span className="quiet small">
              <br />
              {prose(check.source)}
            </span>
          )}
        </td>
        <td className="num">{check ? amount(check.demand) : '—'}</td>
        <td className="num">{check ? amount(check.capacity) : '—'}</td>
        <td className="num">
          {option.governs ? <Used value={option.governs.utilization} /> : '—'}
        </td>
        <td className="num">{amount(option.weight)}</td>
        <td className="num">{option.price ? amount(option.price) : 'none'}</td>
        <td className="num">{option.lead_days ?? '—'}</td>
      </tr>
      {option.why_not && (
        <tr className={`${look} why-not`}>
          <td colSpan={picking ? 9 : 8}>
            <div className="kept-in-view">
              <strong>
                Why not {option.gauge ? `${option.gauge} gauge` : amount(option.thickness)}:
              </strong>{' '}
              {prose(option.why_not.words)}
            </div>
          </td>
        </tr>
      )}
    </>
  );
}

/** Over 1.00 fails, and says so. */
const Used = ({ value }: { readonly value: string }) => (
  <>
    {value}
    {Number(value) > 1 && <strong> over</strong>}
  </>
);

/** The number with a short bar; over 1.00 fails, and says so. */
export function Utilization({ value }: { readonly value: string }) {
  const over = Number(value) > 1;
  return (
    <>
      {value}
      {over && <strong> over</strong>}
      <span className={over ? 'bar-of over' : 'bar-of'} aria-hidden="true">
        <span style={{ width: `${Math.min(100, Number(value) * 100)}%` }} />
      </span>
    </>
  );
}
