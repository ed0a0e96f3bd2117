// One surface in the record: why this gauge first, then each stage with its facts and rules.

import { chosenField, label } from '#jobs/contract';
import type { RecordedStage, RecordedSurface } from '#jobs/contract';
import { Comparison } from '../gauge/comparison.js';
import { Demands, OptionDetails, WhatWouldChange } from '../gauge/zones.js';
import { PlainTable, Tag } from '../parts/table.js';
import { capital, day, moment, pathWords, prose, STATUS_WORDS, value } from '../parts/words.js';

export function SurfaceRecord({ surface }: { readonly surface: RecordedSurface }) {
  const taken = surface.stages.find(({ stage }) => stage === 'gauge');
  const option = taken?.chosen.find(({ what }) => what === 'option')?.value;
  return (
    <section className="stack wide" aria-label={surface.name}>
      <h2>
        {surface.name}, {label(surface.kind)}
      </h2>
      {surface.why.length > 0 && (
        <div className="notice stack tight">
          <h3>Why this gauge</h3>
          {surface.why.map((words, i) => (
            <p key={i}>{capital(prose(words))}</p>
          ))}
        </div>
      )}
      {surface.stages.length === 0 && <p className="quiet">Nothing was decided by then.</p>}
      {surface.stages.map((stage) => (
        <Stage key={stage.stage} stage={stage} />
      ))}
      {surface.gauge && (
        <>
          <Comparison evaluation={surface.gauge} chosen={option} />
          <Demands evaluation={surface.gauge} />
          <OptionDetails evaluation={surface.gauge} />
          <WhatWouldChange evaluation={surface.gauge} />
        </>
      )}
      <SignOff surface={surface} />
    </section>
  );
}

/** Ids of the catalogue: the names beside them are what people read. */
const IDS: readonly string[] = ['profile', 'option', 'recommended'];

function Stage({ stage }: { readonly stage: RecordedStage }) {
  return (
    <article className="sheet stack" aria-label={capital(label(stage.stage))}>
      <div className="row">
        <h3>{capital(label(stage.stage))}</h3>
        <Tag tone={stage.status === 'confirmed' ? 'ready' : 'waiting'}>
          {capital(STATUS_WORDS[stage.status])}
        </Tag>
      </div>
      <p className="quiet small">
        {stage.by} ({label(stage.role)}), {moment(stage.at)}; rules edition {stage.rules_edition},
        catalogue edition {stage.catalogue_edition}
      </p>
      <dl className="facts">
        {stage.chosen
          .filter(({ what }) => !IDS.includes(what))
          .map(({ what, value: words }) => chosenField(what, words))
          .flatMap(([what, words]) => [
            <dt key={what}>{capital(what)}</dt>,
            <dd key={`${what} is`}>{prose(value(words))}</dd>,
          ])}
      </dl>
      {stage.overrides.map((each) => (
        <p key={each.rule}>
          Set aside: {each.rule} ({each.says}) Reason: {each.reason}
        </p>
      ))}
      <details>
        <summary>On which facts ({stage.facts.length})</summary>
        <PlainTable
          caption={`Facts read by ${label(stage.stage)}`}
          columns={['Fact', 'Value', 'How known', 'Source']}
          rows={stage.facts.map((fact) => [
            pathWords(fact.path),
            value(fact.value),
            fact.how ?? '',
            fact.source ?? '',
          ])}
        />
      </details>
      <details>
        <summary>What the rules said ({stage.said.length})</summary>
        <PlainTable
          caption={`Rules asked at ${label(stage.stage)}`}
          columns={['Rule', 'Outcome', 'Severity', 'Words', 'Source']}
          rows={stage.said.map((each) => [
            each.rule,
            label(each.outcome),
            each.severity,
            prose(each.words),
            each.cites.join('; '),
          ])}
        />
      </details>
    </article>
  );
}

function SignOff({ surface: { sign_off: sign } }: { readonly surface: RecordedSurface }) {
  return (
    <article className="sheet stack" aria-label="Engineer sign-off">
      <div className="row">
        <h3>Engineer sign-off</h3>
        <Tag tone={sign.status === 'confirmed' ? 'ready' : 'plain'}>
          {capital(STATUS_WORDS[sign.status])}
        </Tag>
      </div>
      {sign.required.length > 0 && <p>Required because: {sign.required.join('; ')}</p>}
      {sign.license && (
        <p>
          {sign.license.name}, license {sign.license.number}, {sign.license.jurisdiction}, until{' '}
          {day(sign.license.expires)}
        </p>
      )}
      {sign.conditions && <p>Conditions: {sign.conditions}</p>}
    </article>
  );
}
