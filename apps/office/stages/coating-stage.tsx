// Coating: base metal, paint system, metallic coating, color group, from what the catalogue makes.

import { useQuery } from '@tanstack/react-query';
import { COLOR_GROUPS, label, METALLIC_COATINGS, METALS, PAINT_SYSTEMS } from '#jobs/contract';
import type { CommandInput, MadeRow } from '#jobs/contract';
import { catalogueQuery } from '../api/queries.js';
import { RadioField, SelectField, TextField } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { capital } from '../parts/words.js';
import { StageForm } from './stage-form.js';
import { StageFrame } from './stage-frame.js';
import type { StageProps } from './stage-props.js';

type Coating = Extract<CommandInput, { type: 'choose-coating' }>;
type Chosen = 'metal' | 'paint_system' | 'metallic_coating' | 'color_group';

export function CoatingStage(props: StageProps) {
  const { content } = props.surface.stages.coating;
  return (
    <StageFrame
      {...props}
      stage="coating"
      summary={
        content === null
          ? []
          : [
              ['Base metal', capital(label(content.metal))],
              ['Paint system', capital(label(content.paint_system))],
              ['Metallic coating', content.metallic_coating],
              ['Color group', capital(label(content.color_group))],
              ['Color', content.color ?? 'open until the order'],
            ]
      }
      form={() => <CoatingForm {...props} />}
    />
  );
}

function CoatingForm(props: StageProps) {
  const catalogue = useQuery(catalogueQuery);
  const { style, coating } = props.surface.stages;
  if (catalogue.isPending) return <Loading what="the catalogue" />;
  if (!catalogue.data)
    return <Failure error={catalogue.error} retry={() => void catalogue.refetch()} />;
  const made = catalogue.data.made.filter(
    ({ profile, width }) =>
      profile === style.content?.profile && Number(width.v) === Number(style.content.width),
  );
  const initial = {
    metal: coating.content?.metal ?? '',
    paint_system: coating.content?.paint_system ?? '',
    metallic_coating: coating.content?.metallic_coating ?? '',
    color_group: coating.content?.color_group ?? '',
    color: coating.content?.color ?? '',
  };
  const choose = (list: readonly string[], field: Chosen, typed: typeof initial) =>
    list.map((value) => ({ value, label: optionWords(value, made, field, typed) }));
  return (
    <StageForm
      {...props}
      stage="coating"
      initial={initial}
      place={(pointer) => FIELD[pointer.slice(1)] ?? 'paint_system-0'}
      faults={(typed) =>
        NEED.filter(({ name }) => !typed[name]).map(({ name, words }) => ({
          field: FIELD[name] ?? name,
          message: words,
        }))
      }
      command={(typed, on) => ({
        type: 'choose-coating',
        ...on,
        metal: typed.metal as Coating['metal'],
        metallic_coating: typed.metallic_coating as Coating['metallic_coating'],
        paint_system: typed.paint_system as Coating['paint_system'],
        color_group: typed.color_group as Coating['color_group'],
        ...(typed.color.trim() ? { color: typed.color.trim() } : {}),
      })}
    >
      {({ typed, set, errors }) => (
        <>
          <RadioField
            id="metal"
            label="Base metal"
            across
            errors={errors}
            value={typed.metal}
            options={choose(METALS, 'metal', typed)}
            onChange={(metal) => set({ metal })}
          />
          <RadioField
            id="paint_system"
            label="Paint system"
            across
            errors={errors}
            value={typed.paint_system}
            options={choose(PAINT_SYSTEMS, 'paint_system', typed)}
            onChange={(paint_system) => set({ paint_system })}
          />
          <SelectField
            id="metallic_coating"
            label="Metallic coating under the paint"
            empty="Choose one"
            errors={errors}
            value={typed.metallic_coating}
            options={choose(METALLIC_COATINGS, 'metallic_coating', typed)}
            onChange={(metallic_coating) => set({ metallic_coating })}
          />
          <SelectField
            id="color_group"
            label="Color group"
            empty="Choose one"
            errors={errors}
            value={typed.color_group}
            options={choose(COLOR_GROUPS, 'color_group', typed)}
            onChange={(color_group) => set({ color_group })}
          />
          <TextField
            id="color"
            label="Color (optional)"
            hint="May stay open until the order"
            errors={errors}
            value={typed.color}
            onChange={(color) => set({ color })}
          />
        </>
      )}
    </StageForm>
  );
}

const FIELD: Readonly<Record<string, string>> = {
  metal: 'metal-0',
  paint_system: 'paint_system-0',
  metallic_coating: 'metallic_coating',
  color_group: 'color_group',
  color: 'color',
};

const NEED: readonly { readonly name: Chosen; readonly words: string }[] = [
  { name: 'metal', words: 'Choose the base metal' },
  { name: 'paint_system', words: 'Choose the paint system' },
  { name: 'metallic_coating', words: 'Choose the metallic coating' },
  { name: 'color_group', words: 'Choose the color group' },
];

/** The choice, with "not made" where the catalogue has no row for it beside the others chosen. */
function optionWords(
  value: string,
  made: readonly MadeRow[],
  field: Chosen,
  typed: Record<Chosen, string>,
): string {
  const words = capital(label(value));
  const others = NEED.map(({ name }) => name).filter((name) => name !== field && typed[name]);
  const fits = (row: MadeRow, name: Chosen, wanted: string): boolean =>
    name === 'color_group'
      ? row.color_groups.some((each) => each === wanted)
      : row[name] === wanted;
  const exists = made.some(
    (row) => fits(row, field, value) && others.every((name) => fits(row, name, typed[name])),
  );
  return exists ? words : `${words} (not made with these)`;
}
