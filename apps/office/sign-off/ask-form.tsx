// Asking an engineer: who, for which surfaces, what they are asked, until when.

import { useQuery } from '@tanstack/react-query';
import { peopleQuery } from '../api/queries.js';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { CheckField, DateField, LongField, SelectField } from '../parts/fields.js';
import { useForm } from '../parts/use-form.js';
import { day, parseDay, today } from '../parts/words.js';
import type { StageProps } from '../stages/stage-props.js';

const IN_THREE_WEEKS = 21 * 86_400_000;

export function AskForm({ job, surface }: StageProps) {
  const people = useQuery({ ...peopleQuery, retry: false }).data?.people ?? [];
  const engineers = people.filter(({ roles }) => roles.includes('engineer'));
  const draft = useDraft(`${job.id} ${surface.id} ask`, {
    engineer: '',
    surfaces: [surface.id] as readonly string[],
    scope: '',
    exclusions: '',
    expires: day(today(new Date(Date.now() + IN_THREE_WEEKS))),
  });
  const { value, set } = draft;
  const form = useForm(
    job.id,
    (pointer) => PLACE[pointer.split('/')[1] ?? ''] ?? '',
    'The engineer was asked.',
  );
  const others = job.surfaces.filter(
    ({ withdrawn, stages, sign_off }) =>
      withdrawn === null && stages.gauge.status === 'confirmed' && sign_off.status !== 'confirmed',
  );
  const faults = () => [
    ...(value.engineer ? [] : [{ field: 'ask-engineer', message: 'Choose the engineer' }]),
    ...(value.surfaces.length > 0
      ? []
      : [{ field: 'ask-surfaces-0', message: 'Choose at least one surface' }]),
    ...(value.scope.trim()
      ? []
      : [{ field: 'ask-scope', message: 'Say what the engineer is asked to review' }]),
    ...(parseDay(value.expires)
      ? []
      : [{ field: 'ask-expires', message: 'Enter the last day like 14 Feb 2026' }]),
  ];
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        form.submit(
          faults(),
          () => ({
            type: 'request-sign-off',
            request: `r${job.requests.length + 1}`,
            surfaces: [...value.surfaces],
            engineer: { id: value.engineer },
            scope: value.scope.trim(),
            exclusions: value.exclusions.trim(),
            expires: parseDay(value.expires) ?? '',
          }),
          draft.clear,
        );
      }}
    >
      <ErrorSummary {...form} />
      <SelectField
        id="ask-engineer"
        label="Engineer"
        empty="Choose one"
        errors={form.errors}
        value={value.engineer}
        {...(engineers.length === 0
          ? { hint: 'Nobody here has the engineer role yet; the administrator adds people' }
          : {})}
        options={engineers.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(engineer) => set({ engineer })}
      />
      <CheckField
        id="ask-surfaces"
        label="Surfaces"
        errors={form.errors}
        values={value.surfaces}
        options={others.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(surfaces) => set({ surfaces })}
      />
      <LongField
        id="ask-scope"
        label="What the engineer is asked to review"
        errors={form.errors}
        value={value.scope}
        onChange={(scope) => set({ scope })}
      />
      <LongField
        id="ask-exclusions"
        label="What is not asked (optional)"
        errors={form.errors}
        value={value.exclusions}
        onChange={(exclusions) => set({ exclusions })}
      />
      <DateField
        id="ask-expires"
        label="Answer until"
        errors={form.errors}
        value={value.expires}
        onChange={(expires) => set({ expires })}
      />
      <p className="quiet">
        The packet is frozen as it stands now. If a fact in it changes before the answer, the answer
        is refused and the engineer is told what changed.
      </p>
      <div>
        <button type="submit" className="main" aria-disabled={form.busy}>
          Ask the engineer
        </button>
      </div>
    </form>
  );
}

const PLACE: Readonly<Record<string, string>> = {
  engineer: 'ask-engineer',
  surfaces: 'ask-surfaces-0',
  scope: 'ask-scope',
  expires: 'ask-expires',
};
