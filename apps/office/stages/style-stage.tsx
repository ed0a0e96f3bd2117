// Style: the profile from the catalogue and its width.

import { useQuery } from '@tanstack/react-query';
import { FAMILIES, label } from '#jobs/contract';
import type { Catalogue } from '#jobs/contract';
import { catalogueQuery } from '../api/queries.js';
import { RadioField, SelectField, Tick } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { amount, capital } from '../parts/words.js';
import { StageForm } from './stage-form.js';
import { StageFrame } from './stage-frame.js';
import type { StageProps } from './stage-props.js';

export function StyleStage(props: StageProps) {
  const { content } = props.surface.stages.style;
  return (
    <StageFrame
      {...props}
      stage="style"
      summary={
        content === null
          ? []
          : [
              ['Profile', content.profile_name],
              ['Panel family', capital(label(content.family))],
              ['Width', `${content.width} in`],
              ['Lap sealant', content.lap_sealant ? 'yes, goes on the order' : 'no'],
            ]
      }
      form={() => <StyleForm {...props} />}
    />
  );
}

function StyleForm(props: StageProps) {
  const catalogue = useQuery(catalogueQuery);
  const { content } = props.surface.stages.style;
  if (catalogue.isPending) return <Loading what="the catalogue" />;
  if (!catalogue.data)
    return <Failure error={catalogue.error} retry={() => void catalogue.refetch()} />;
  const { profiles } = catalogue.data;
  const initial = {
    family: content?.family ?? '',
    profile: content?.profile ?? '',
    width: content?.width ?? '',
    lap_sealant: content?.lap_sealant ?? false,
  };
  const find = (id: string) => profiles.find((each) => each.id === id);
  const widthOf = (typed: typeof initial) => {
    const widths = find(typed.profile)?.widths ?? [];
    return widths.length === 1 ? (widths[0]?.v ?? '') : typed.width;
  };
  return (
    <StageForm
      {...props}
      stage="style"
      initial={initial}
      place={(pointer) => (pointer.startsWith('/width') ? 'width-0' : 'profile-0')}
      faults={(typed) => [
        ...(typed.profile ? [] : [{ field: 'profile-0', message: 'Choose a profile' }]),
        ...(typed.profile && !widthOf(typed)
          ? [{ field: 'width-0', message: 'Choose a width' }]
          : []),
      ]}
      command={(typed, on) => ({
        type: 'choose-style',
        ...on,
        profile: typed.profile,
        width: { v: widthOf(typed), u: 'in' },
        lap_sealant: typed.lap_sealant,
      })}
    >
      {({ typed, set, errors }) => {
        const profile = find(typed.profile);
        return (
          <>
            <SelectField
              id="family"
              label="Panel family to show"
              empty="All families"
              value={typed.family}
              options={FAMILIES.filter((each) =>
                profiles.some(({ family }) => family === each),
              ).map((each) => ({ value: each, label: capital(label(each)) }))}
              onChange={(family) => set({ family })}
            />
            <RadioField
              id="profile"
              label="Which profile?"
              big
              errors={errors}
              value={typed.profile}
              options={profiles
                .filter(
                  ({ id, family }) =>
                    !typed.family || family === typed.family || id === typed.profile,
                )
                .map((each) => ({ value: each.id, label: each.name, hint: profileWords(each) }))}
              onChange={(id) => set({ profile: id, width: '' })}
            />
            {profile && profile.widths.length > 1 && (
              <RadioField
                id="width"
                label="Width"
                across
                errors={errors}
                value={typed.width}
                options={profile.widths.map((each) => ({ value: each.v, label: amount(each) }))}
                onChange={(width) => set({ width })}
              />
            )}
            {profile?.fastening === 'exposed' && (
              <Tick
                id="lap-sealant"
                label="Laps are sealed"
                hint="The sealant then goes on the order"
                checked={typed.lap_sealant}
                onChange={(on) => set({ lap_sealant: on })}
              />
            )}
          </>
        );
      }}
    </StageForm>
  );
}

const profileWords = (profile: Catalogue['profiles'][number]): string =>
  [
    `${capital(label(profile.family))}, ${profile.fastening} fastener, ${label(profile.seam)}`,
    `${profile.widths.map(({ v }) => v).join(' or ')} in wide`,
    `rib ${amount(profile.rib_height)}`,
    `listed from ${profile.least_slope.v} in 12`,
    profile.structural ? 'spans open framing' : 'needs a solid deck',
  ].join('; ');
