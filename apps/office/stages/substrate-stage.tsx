// Substrate: what the panels lie on, from measured or documented facts; a reroof is provisional
// until the old roof is off.

import { label } from '#jobs/contract';
import type { JobView, SurfaceView } from '#jobs/contract';
import { Tick } from '../parts/fields.js';
import { capital } from '../parts/words.js';
import { StageForm } from './stage-form.js';
import { StageFrame } from './stage-frame.js';
import type { StageProps } from './stage-props.js';
import { TearOff } from './tear-off.js';

export function SubstrateStage(props: StageProps) {
  const { surface } = props;
  const { content } = surface.stages.substrate;
  return (
    <StageFrame
      {...props}
      stage="substrate"
      summary={
        content === null
          ? []
          : [
              ['Substrate', capital(label(content.substrate))],
              ['Kind', content.open_framing ? 'Open framing: the panels span' : 'Solid'],
              ['Provisional', content.provisional ? 'yes, until the tear-off checkpoint' : 'no'],
            ]
      }
      extra={surface.tear_off !== 'not-needed' && <TearOff {...props} />}
      form={() => <SubstrateForm {...props} />}
    />
  );
}

const factOf = (job: JobView, surface: SurfaceView, name: string): unknown =>
  job.facts.find(({ path }) => path === `surface/${surface.id}/${name}`)?.value;

function SubstrateForm(props: StageProps) {
  const { job, surface } = props;
  const reroof = factOf(job, surface, 'reroof') === true && surface.tear_off !== 'confirmed';
  return (
    <StageForm
      {...props}
      stage="substrate"
      initial={{ provisional: surface.stages.substrate.content?.provisional ?? reroof }}
      place={() => 'provisional'}
      faults={() => []}
      command={(typed, on) => ({
        type: 'confirm-substrate',
        ...on,
        provisional: typed.provisional,
      })}
    >
      {({ typed, set }) => (
        <fieldset>
          <legend className="big">Do the facts above describe what is there?</legend>
          <span className="hint">
            Change them first where they do not. The worst spacing measured counts, never the
            average.
          </span>
          <Tick
            id="provisional"
            label="Provisional, until the old roof is off"
            hint="The tear-off checkpoint then confirms or reopens this stage"
            checked={typed.provisional}
            onChange={(provisional) => set({ provisional })}
          />
        </fieldset>
      )}
    </StageForm>
  );
}
