// Gauge: the attachment proposed by zone, every option compared, the pick and why.

import { useQuery } from '@tanstack/react-query';
import type { Catalogue, Evaluation, SurfaceView } from '#jobs/contract';
import { catalogueQuery } from '../api/queries.js';
import { LongField } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { amount, fastenerName } from '../parts/words.js';
import { StageForm } from '../stages/stage-form.js';
import { StageFrame } from '../stages/stage-frame.js';
import type { StageProps } from '../stages/stage-props.js';
import { AttachmentFields } from './attachment-fields.js';
import { attachmentOf, attachmentTyped, gaugeFaults, gaugePlace } from './attachment-entry.js';
import { Comparison } from './comparison.js';
import { Pictures } from './pictures.js';
import { Demands, OptionDetails, WhatWouldChange } from './zones.js';

export function GaugeStage(props: StageProps) {
  const { content, evaluation, status } = props.surface.stages.gauge;
  const { data: catalogue } = useQuery(catalogueQuery);
  return (
    <StageFrame
      {...props}
      stage="gauge"
      summary={
        content === null
          ? []
          : [
              [
                'Gauge',
                content.gauge === null ? 'none: this metal has thicknesses only' : content.gauge,
              ],
              ['Base thickness', `${content.thickness_in} in`],
              ['Grade', content.grade],
              [
                'Attachment',
                `${fastenerName(content.attachment.fastener, catalogue)}: ${content.attachment.zones.map(({ zone, spacing, rows }) => `zone ${zone} every ${amount(spacing)}${rows ? `, rows every ${amount(rows)}` : ''}`).join('; ')}`,
              ],
              ['Why this one', content.why ?? 'The recommended option'],
            ]
      }
      extra={
        evaluation &&
        status !== 'not-started' && <Whole evaluation={evaluation} chosen={content?.option} />
      }
      form={() => <GaugeForm {...props} />}
    />
  );
}

function Whole({
  evaluation,
  chosen,
}: {
  readonly evaluation: Evaluation;
  readonly chosen?: string | undefined;
}) {
  return (
    <>
      <Comparison evaluation={evaluation} chosen={chosen} />
      <Pictures evaluation={evaluation} chosen={chosen} />
      <Demands evaluation={evaluation} />
      <OptionDetails evaluation={evaluation} />
      <WhatWouldChange evaluation={evaluation} />
    </>
  );
}

function GaugeForm(props: StageProps) {
  const catalogue = useQuery(catalogueQuery);
  if (catalogue.isPending) return <Loading what="the catalogue" />;
  if (!catalogue.data)
    return <Failure error={catalogue.error} retry={() => void catalogue.refetch()} />;
  const fasteners = fitting(catalogue.data, props.surface);
  return (
    <StageForm
      {...props}
      stage="gauge"
      initial={{
        ...attachmentTyped(props.surface, fasteners),
        option: props.surface.stages.gauge.content?.option ?? '',
        why: props.surface.stages.gauge.content?.why ?? '',
      }}
      place={gaugePlace}
      faults={(typed, rehearsal) => [
        ...gaugeFaults(typed),
        ...(rehearsal ? pickFaults(typed, rehearsal.evaluation) : []),
      ]}
      command={(typed, on) => ({
        type: 'select-gauge',
        ...on,
        option: typed.option || 'none',
        attachment: attachmentOf(typed),
        ...(typed.why.trim() ? { why: typed.why.trim() } : {}),
      })}
    >
      {({ typed, set, errors, rehearsal, asking }) => {
        const evaluation = rehearsal?.evaluation;
        const other =
          typed.option !== '' && evaluation && evaluation.recommendation.option !== typed.option;
        return (
          <>
            <AttachmentFields {...{ typed, set, errors, fasteners }} />
            {!evaluation && asking && <Loading what="the comparison" />}
            {evaluation && (
              <>
                <Comparison
                  evaluation={evaluation}
                  picking={{ chosen: typed.option, pick: (option) => set({ option }) }}
                />
                {other && (
                  <LongField
                    id="why"
                    label="Why this one and not the recommended option"
                    errors={errors}
                    value={typed.why}
                    onChange={(why) => set({ why })}
                  />
                )}
                <Pictures evaluation={evaluation} chosen={typed.option || undefined} />
                <Demands evaluation={evaluation} />
                <OptionDetails evaluation={evaluation} />
                <WhatWouldChange evaluation={evaluation} />
              </>
            )}
          </>
        );
      }}
    </StageForm>
  );
}

/** Clips for concealed profiles, screws for exposed ones. */
function fitting({ profiles, fasteners }: Catalogue, surface: SurfaceView): Catalogue['fasteners'] {
  const profile = profiles.find(({ id }) => id === surface.stages.style.content?.profile);
  return fasteners.filter(({ kind }) =>
    profile?.fastening === 'concealed' ? kind === 'clip' : kind === 'screw',
  );
}

function pickFaults(
  { option, why }: { readonly option: string; readonly why: string },
  evaluation: Evaluation | undefined,
) {
  const first = evaluation?.options.find(({ admissible }) => admissible)?.id;
  if (!option) {
    const words = first
      ? 'Take one of the options that pass'
      : 'No option passes: change the attachment, the supports or an earlier stage';
    return [{ field: first ? `option-${first}` : 'fastener', message: words }];
  }
  return evaluation && evaluation.recommendation.option !== option && !why.trim()
    ? [{ field: 'why', message: 'Say why this one is taken and not the recommended option' }]
    : [];
}
