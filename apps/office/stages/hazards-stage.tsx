// Hazards: wind and snow on this surface, entered from a document or calculated from the facts.

import { label } from '#jobs/contract';
import type { HazardsContent } from '#jobs/contract';
import { TextField } from '../parts/fields.js';
import { PlainTable } from '../parts/table.js';
import { capital, number, prose } from '../parts/words.js';
import { WindFields } from './hazards-fields.js';
import { SnowFields } from './snow-fields.js';
import { hazardsFaults, hazardsOf, hazardsPlace, hazardsTyped } from './hazards-entry.js';
import { StageForm } from './stage-form.js';
import { StageFrame } from './stage-frame.js';
import { Steps } from './steps.js';
import { ZonePicture } from './zone-picture.js';
import type { StageProps } from './stage-props.js';

export function HazardsStage(props: StageProps) {
  const { content } = props.surface.stages.hazards;
  return (
    <StageFrame
      {...props}
      stage="hazards"
      summary={content === null ? [] : summary(content)}
      extra={
        content && (
          <>
            <ZonePicture job={props.job} surface={props.surface} />
            <Pressures content={content} />
          </>
        )
      }
      form={() => <HazardsForm {...props} />}
    />
  );
}

const loadWords = (load: HazardsContent['wind'] | HazardsContent['snow']): string =>
  load.method === 'not-applicable'
    ? `does not act here: ${load.source}`
    : `${METHOD[load.method]} at ${load.basis} level: ${prose(load.source)}${load.by_engineer ? ', by an engineer' : ''}`;
const METHOD = { entered: 'entered', calculated: 'calculated' } as const;

const summary = ({ wind, snow, roof_live_psf, temperature }: HazardsContent) =>
  [
    ['Wind', loadWords(wind)],
    [
      'Snow',
      `${snow.method === 'not-applicable' ? '' : `${number(snow.roof_psf)} psf on the roof, `}${loadWords(snow)}`,
    ],
    ['Roof live load', roof_live_psf === null ? 'not given' : `${roof_live_psf} psf`],
    [
      'Temperature',
      temperature === null
        ? 'not given'
        : `${number(temperature.low.v)} to ${number(temperature.high.v)} °F`,
    ],
    ...(wind.unconfirmed.length + snow.unconfirmed.length > 0
      ? [['Edition text to be confirmed', [...wind.unconfirmed, ...snow.unconfirmed].join('; ')]]
      : []),
    ...(wind.outside.length + snow.outside.length > 0
      ? [['Outside the method', [...wind.outside, ...snow.outside].join('; ')]]
      : []),
  ] as [string, string][];

function Pressures({ content: { wind, snow } }: { readonly content: HazardsContent }) {
  return (
    <section className="stack" aria-label="Pressures by zone">
      {wind.zones.length > 0 && (
        <PlainTable
          caption="Wind pressure by zone, psf"
          note={`${wind.basis} level; inward toward the surface, uplift away from it`}
          columns={['Zone', 'Part', { name: 'Inward', num: true }, { name: 'Uplift', num: true }]}
          rows={wind.zones.map((each) => [
            each.zone,
            capital(label(each.part)),
            number(each.inward_psf),
            number(each.outward_psf),
          ])}
        />
      )}
      <Steps title="Wind, step by step" steps={wind.steps} />
      <Steps title="Snow, step by step" steps={snow.steps} />
    </section>
  );
}

const HazardsForm = (props: StageProps) => (
  <StageForm
    {...props}
    stage="hazards"
    initial={hazardsTyped(props.surface)}
    place={hazardsPlace}
    faults={hazardsFaults}
    command={(typed, on) => ({ type: 'assess-hazards', ...on, hazards: hazardsOf(typed) })}
  >
    {({ typed, set, errors }) => (
      <>
        <WindFields {...{ typed, set, errors }} />
        <SnowFields {...{ typed, set, errors }} />
        <TextField
          id="roof-live"
          label="Roof live load (optional)"
          numeric
          unit="psf"
          errors={errors}
          value={typed.roofLive}
          onChange={(roofLive) => set({ roofLive })}
        />
      </>
    )}
  </StageForm>
);
