// What every stage shows: what was confirmed and why it needs re-check; then its form, or why it
// cannot be confirmed yet.

import { useState, type ReactNode } from 'react';
import { Link } from '@tanstack/react-router';
import { label, STAGES } from '#jobs/contract';
import type { Finding, Stage, StageView } from '#jobs/contract';
import { Findings } from '../parts/findings.js';
import { capital, moment, pathWords, value } from '../parts/words.js';
import { Reopen } from './reopen.js';
import { statusOf } from './stage-state.js';
import type { StageProps } from './stage-props.js';

type ConfirmedStage = Exclude<Stage, 'sign-off'>;

export function StageFrame({
  job,
  surface,
  stage,
  nameOf,
  may,
  summary,
  form,
  extra,
}: StageProps & {
  readonly stage: ConfirmedStage;
  /** What was settled, as words beside words. */
  readonly summary: readonly (readonly [string, ReactNode])[];
  readonly form: () => ReactNode;
  readonly extra?: ReactNode;
}) {
  const view: StageView = surface.stages[stage];
  const [changing, setChanging] = useState(false);
  const first = STAGES.slice(0, STAGES.indexOf(stage)).find(
    (each) => statusOf(surface, each) !== 'confirmed',
  );
  const open = view.status === 'not-started' || view.status === 'needs-recheck' || changing;
  return (
    <>
      {view.status === 'needs-recheck' && <Causes view={view} nameOf={nameOf} />}
      {view.content !== null && <Settled {...{ view, summary, nameOf }} />}
      {extra}
      {view.content !== null && !open && (
        <Findings findings={view.findings} edition={view.rules_edition} />
      )}
      {may && view.status === 'confirmed' && !changing && (
        <div>
          <button type="button" onClick={() => setChanging(true)}>
            Change {label(stage)}
          </button>
        </div>
      )}
      {may && view.status === 'confirmed' && !changing && <Reopen {...{ job, surface, stage }} />}
      {open && first && (
        <div className="notice">
          <p>
            {capital(label(stage))} can be confirmed once {label(first)} is done.{' '}
            <Link
              to="/jobs/$job/surfaces/$surface/$stage"
              params={{ job: job.id, surface: surface.id, stage: first }}
            >
              Go to {label(first)}
            </Link>
          </p>
        </div>
      )}
      {open && !first && may && form()}
      {open && !may && <p className="quiet">Your role may read this stage, not confirm it.</p>}
    </>
  );
}

function Settled({
  view,
  summary,
  nameOf,
}: {
  readonly view: StageView;
  readonly summary: readonly (readonly [string, ReactNode])[];
  readonly nameOf: (id: string) => string;
}) {
  return (
    <section className="sheet stack" aria-label="What was confirmed">
      <h2>What was confirmed</h2>
      <dl className="facts">
        {summary.flatMap(([name, words]) => [
          <dt key={name}>{name}</dt>,
          <dd key={`${name} is`}>{words}</dd>,
        ])}
      </dl>
      {view.overrides.map((each) => (
        <p key={each.rule}>
          Set aside: {each.rule} ({each.says}) Reason: {each.reason}
        </p>
      ))}
      {view.confirmed && (
        <p className="quiet small">
          Confirmed by {nameOf(view.confirmed.by)} ({label(view.confirmed.role)}),{' '}
          {moment(view.confirmed.at)}; rules edition {view.rules_edition?.number}, catalogue edition{' '}
          {view.catalogue_edition?.number}
        </p>
      )}
    </section>
  );
}

function Causes({
  view,
  nameOf,
}: {
  readonly view: StageView;
  readonly nameOf: (id: string) => string;
}) {
  return (
    <div className="notice waiting stack tight">
      <h2>Needs re-check</h2>
      <p>
        Something this stage read has changed. Its content is kept; look at it and confirm again.
      </p>
      <ul>
        {view.causes.map((cause, i) => (
          <li key={i}>
            {pathWords(cause.path)}: {value(cause.from)} → {value(cause.to)} ({nameOf(cause.by)},{' '}
            {moment(cause.at)}
            {cause.reason && `: ${cause.reason}`})
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Cautions that must be acknowledged before the stage can be confirmed. */
export const unreadCautions = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(({ outcome, severity }) => outcome === 'fail' && severity === 'caution');

/** Refusals of guidance and house policy, which a named role may set aside with a reason. */
export const movable = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(
    ({ outcome, severity, class: of }) =>
      outcome === 'fail' && severity === 'refuse' && (of === 'guidance' || of === 'house-policy'),
  );
