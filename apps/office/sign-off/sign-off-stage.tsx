// Sign-off of one surface: whether an engineer is required and why, what stands, asking for one, or
// entering a design that an engineer sent.

import { Link } from '@tanstack/react-router';
import type { SignOffView } from '#jobs/contract';
import { TabSet } from '../parts/tabs.js';
import { Tag, type Tone } from '../parts/table.js';
import { capital, day, pathWords, STATUS_WORDS, value } from '../parts/words.js';
import type { StageProps } from '../stages/stage-props.js';
import { AskForm } from './ask-form.js';
import { DesignForm } from './design-form.js';

const TONES: Readonly<Record<SignOffView['status'], Tone>> = {
  confirmed: 'ready',
  waiting: 'waiting',
  declined: 'blocked',
  'needs-recheck': 'waiting',
  'not-needed': 'plain',
  'not-started': 'plain',
};

export function SignOffStage(props: StageProps) {
  const { job, surface, may } = props;
  const sign = surface.sign_off;
  const ready = surface.stages.gauge.status === 'confirmed';
  return (
    <>
      <section className="sheet stack" aria-label="Where the sign-off stands">
        <div className="row">
          <h2>Engineer sign-off</h2>
          <Tag tone={TONES[sign.status]}>{capital(STATUS_WORDS[sign.status])}</Tag>
        </div>
        {sign.required.length > 0 ? (
          <>
            <p>An engineer is required because</p>
            <ul>
              {sign.required.map((why) => (
                <li key={why}>{why}</li>
              ))}
            </ul>
          </>
        ) : (
          <p>
            {ready
              ? 'No rule and nobody asks for an engineer here.'
              : 'Known once the gauge is selected.'}
          </p>
        )}
        {sign.license && (
          <p>
            {sign.license.name}, license {sign.license.number}, {sign.license.jurisdiction}, until{' '}
            {day(sign.license.expires)}
          </p>
        )}
        {sign.standing && <p>Standing: {sign.standing}</p>}
        {sign.conditions && <p>Conditions: {sign.conditions}</p>}
        {sign.request && (
          <p>
            <Link to="/jobs/$job/requests/$request" params={{ job: job.id, request: sign.request }}>
              See the request and what was answered
            </Link>
          </p>
        )}
        <p className="quiet small">This software draws no seal and signs for nobody.</p>
      </section>
      <Differences sign={sign} />
      {may && sign.status !== 'waiting' && sign.status !== 'confirmed' && (
        <TabSet
          label="Two ways to a sign-off"
          tabs={[
            {
              name: 'Ask an engineer here',
              content: ready ? <AskForm {...props} /> : <NotYet />,
            },
            { name: 'Enter a design received', content: <DesignForm {...props} /> },
          ]}
        />
      )}
    </>
  );
}

const NotYet = () => (
  <p className="notice">An engineer can be asked once the gauge is selected on today’s facts.</p>
);

export function Differences({ sign }: { readonly sign: SignOffView }) {
  if (sign.differences.length === 0) return null;
  return (
    <div className="notice waiting stack tight">
      <h2>Changed since the engineer saw it</h2>
      <ul>
        {sign.differences.map((each, i) => (
          <li key={i}>
            {pathWords(each.path)}: {value(each.from)} → {value(each.to)}
          </li>
        ))}
      </ul>
      <p>A new sign-off, or the engineer’s own reaffirmation naming these differences, cures it.</p>
    </div>
  );
}
