// Facts with their sources: the value, how it is known, who recorded it and when, and what it was.

import { Link } from '@tanstack/react-router';
import { factDefinition } from '#jobs/contract';
import type { FactView, JobView, Stage, SurfaceView } from '#jobs/contract';
import { moment, value } from '../parts/words.js';
import { SALE, slotsFor, slotsOn, type FactSlot } from './by-stage.js';

export function StageFacts({
  job,
  surface,
  stage,
  nameOf,
  may,
}: {
  readonly job: JobView;
  readonly surface: SurfaceView;
  readonly stage: Stage;
  readonly nameOf: (id: string) => string;
  readonly may: boolean;
}) {
  const slots = slotsFor(job, surface, stage);
  if (slots.length === 0) return null;
  const settled = stage !== 'sign-off' && surface.stages[stage].status === 'confirmed';
  return (
    <section className="stack tight" aria-labelledby="facts-title">
      <div className="row ends">
        <h2 id="facts-title">Facts for this stage</h2>
        {may && (
          <Link
            className="button no-print"
            to="/jobs/$job/facts"
            params={{ job: job.id }}
            search={{ surface: surface.id, stage }}
          >
            Record or change facts
          </Link>
        )}
      </div>
      <Counted slots={slots} nameOf={nameOf} open={!settled} />
    </section>
  );
}

/** What an order asks of the office, recorded or not. */
export function SaleFacts({
  job,
  nameOf,
  may,
}: {
  readonly job: JobView;
  readonly nameOf: (id: string) => string;
  readonly may: boolean;
}) {
  return (
    <section className="sheet stack tight" aria-labelledby="sale-title">
      <div className="row ends">
        <h3 id="sale-title">The sale and its papers</h3>
        {may && (
          <Link
            className="button no-print"
            to="/jobs/$job/facts"
            params={{ job: job.id }}
            search={{ on: SALE }}
          >
            Record or change them
          </Link>
        )}
      </div>
      <Counted slots={slotsOn(job, SALE)} nameOf={nameOf} open={false} />
    </section>
  );
}

interface Slots {
  readonly slots: readonly FactSlot[];
  readonly nameOf: (id: string) => string;
}

/** How many are recorded, and behind it which. */
function Counted({ open, ...given }: Slots & { readonly open: boolean }) {
  const known = given.slots.filter(({ fact }) => fact !== undefined).length;
  return (
    <details open={open}>
      <summary>
        {known} recorded, {given.slots.length - known} not recorded
      </summary>
      <div className="stack">
        <FactList {...given} />
      </div>
    </details>
  );
}

export function FactList({ slots, nameOf }: Slots) {
  const known = slots.filter(({ fact }) => fact !== undefined);
  const open = slots.filter(({ fact }) => fact === undefined);
  return (
    <>
      {known.length > 0 && (
        <dl className="facts">
          {known.flatMap(({ name, path, fact }) =>
            fact === undefined
              ? []
              : [
                  <dt key={path}>{factDefinition(name).asks}</dt>,
                  <dd key={`${path} value`}>
                    <Fact fact={fact} nameOf={nameOf} />
                  </dd>,
                ],
          )}
        </dl>
      )}
      {open.length > 0 && (
        <p className="quiet">
          Not recorded:{' '}
          {open.map(({ name }) => factDefinition(name).asks.replace(/\?$/, '')).join('; ')}.
        </p>
      )}
    </>
  );
}

function Fact({
  fact,
  nameOf,
}: {
  readonly fact: FactView;
  readonly nameOf: (id: string) => string;
}) {
  return (
    <>
      {value(fact.value)}
      <span className="source">
        {fact.how === 'assumed' ? <strong>assumed</strong> : fact.how}
        {fact.source && `: ${fact.source}`}; {nameOf(fact.by)}, {moment(fact.at)}
        {fact.effectiveAt.slice(0, 16) !== fact.at.slice(0, 16) &&
          `; true since ${moment(fact.effectiveAt)}`}
      </span>
      {fact.earlier.length > 0 && (
        <details>
          <summary>
            {fact.earlier.length} earlier {fact.earlier.length === 1 ? 'value' : 'values'}
          </summary>
          <ul>
            {fact.earlier.map((each, i) => (
              <li key={i}>
                {value(each.value)} ({each.how}; {nameOf(each.by)}, {moment(each.at)})
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
