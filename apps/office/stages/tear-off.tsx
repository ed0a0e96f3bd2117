// The tear-off checkpoint: with the old roof off, is it as assumed?

import { ActForm } from '../parts/act-form.js';
import { useDraft } from '../parts/draft.js';
import { LongField, RadioField } from '../parts/fields.js';
import { useForm } from '../parts/use-form.js';
import type { StageProps } from './stage-props.js';

export function TearOff({ job, surface, may }: StageProps) {
  const draft = useDraft(`${job.id} ${surface.id} tear-off`, { finding: '', words: '' });
  const { value, set } = draft;
  const form = useForm(job.id, () => 'tear-words', 'Checkpoint recorded.');
  if (surface.tear_off === 'confirmed') {
    return (
      <p>
        Tear-off checkpoint: confirmed
        {surface.on_hold && '; panel laying is on hold, dry-in is allowed'}.
      </p>
    );
  }
  const faults = [
    ...(value.finding ? [] : [{ field: 'tear-0', message: 'Say whether it is as assumed' }]),
    ...(value.words.trim() ? [] : [{ field: 'tear-words', message: 'Say what was found' }]),
  ];
  return (
    <section className="notice waiting stack" aria-label="Tear-off checkpoint">
      <h2>Tear-off checkpoint due</h2>
      {surface.on_hold && <p>Panel laying is on hold; dry-in is allowed.</p>}
      {may && (
        <ActForm
          form={form}
          button="Record the checkpoint"
          submit={() =>
            form.submit(
              faults,
              () => ({
                type: 'record-tear-off',
                surface: surface.id,
                finding: value.finding as 'different',
                words: value.words.trim(),
              }),
              draft.clear,
            )
          }
        >
          <RadioField
            id="tear"
            label="With the old roof off, the substrate is"
            errors={form.errors}
            options={[
              { value: 'as-assumed', label: 'As assumed' },
              {
                value: 'different',
                label: 'Different',
                hint: 'Substrate is reopened for this surface; panel laying goes on hold',
              },
            ]}
            value={value.finding}
            onChange={(finding) => set({ finding })}
          />
          <LongField
            id="tear-words"
            label="What was found"
            errors={form.errors}
            value={value.words}
            onChange={(words) => set({ words })}
          />
        </ActForm>
      )}
    </section>
  );
}
