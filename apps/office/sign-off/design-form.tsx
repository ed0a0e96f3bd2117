// A design received from an engineer: entered by the office, attached, not verified here.

import { useDraft } from '../parts/draft.js';
import type { StoredFile } from '../api/files.js';
import { ErrorSummary } from '../parts/errors.js';
import { DateField, LongField, TextField } from '../parts/fields.js';
import { FileField } from '../parts/file-field.js';
import {
  LicenseFields,
  licenseFaults,
  licenseOf,
  licensePlace,
  NO_LICENSE,
} from '../parts/license.js';
import { useForm } from '../parts/use-form.js';
import { parseDay } from '../parts/words.js';
import { decimal } from '../stages/hazards-entry.js';
import type { StageProps } from '../stages/stage-props.js';

export function DesignForm({ job, surface }: StageProps) {
  const draft = useDraft(`${job.id} ${surface.id} design`, {
    ...NO_LICENSE,
    dated: '',
    scope: '',
    exclusions: '',
    words: '',
    thickness: '',
    spacing: '',
    files: [] as readonly StoredFile[],
  });
  const { value, set } = draft;
  const form = useForm(
    job.id,
    (pointer) => licensePlace(pointer) ?? PLACE[pointer.split('/')[1] ?? ''] ?? '',
    'The design was entered.',
  );
  const faults = () => [
    ...licenseFaults(value),
    ...(value.files.length > 0
      ? []
      : [{ field: 'design-files', message: 'Attach the letter or drawings' }]),
    ...(parseDay(value.dated)
      ? []
      : [{ field: 'dated', message: 'Enter the date of the design like 14 Feb 2026' }]),
    ...(value.scope.trim()
      ? []
      : [{ field: 'design-scope', message: 'Say what the design covers' }]),
    ...(value.words.trim() ? [] : [{ field: 'words', message: 'Say what the design settles' }]),
    ...(['thickness', 'spacing'] as const).flatMap((field) =>
      value[field].trim() && !decimal(value[field])
        ? [{ field: `design-${field}`, message: 'Enter inches in digits, or leave it empty' }]
        : [],
    ),
  ];
  const amountOf = (text: string) => ({ v: decimal(text) ?? '', u: 'in' as const });
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        form.submit(
          faults(),
          () => ({
            type: 'record-engineer-design',
            design: `d${crypto.randomUUID().slice(0, 8)}`,
            surfaces: [surface.id],
            license: licenseOf(value),
            documents: value.files.map(({ digest, name }) => ({ digest, name })),
            dated: parseDay(value.dated) ?? '',
            scope: value.scope.trim(),
            exclusions: value.exclusions.trim(),
            adopts: {
              words: value.words.trim(),
              ...(value.thickness.trim() ? { thickness: amountOf(value.thickness) } : {}),
              ...(value.spacing.trim() ? { support_spacing: amountOf(value.spacing) } : {}),
            },
          }),
          draft.clear,
        );
      }}
    >
      <ErrorSummary {...form} />
      <p className="quiet">
        The record will say “attached, not verified in this system”. What the design settles binds
        the gauge stage.
      </p>
      <FileField
        id="design-files"
        label="Sealed letter or drawings"
        files={value.files}
        errors={form.errors}
        set={(files) => set({ files })}
      />
      <DateField
        id="dated"
        label="Date of the design"
        errors={form.errors}
        value={value.dated}
        onChange={(dated) => set({ dated })}
      />
      <LicenseFields typed={value} set={set} errors={form.errors} />
      <LongField
        id="design-scope"
        label="What the design covers"
        errors={form.errors}
        value={value.scope}
        onChange={(scope) => set({ scope })}
      />
      <LongField
        id="design-exclusions"
        label="What it does not cover (optional)"
        value={value.exclusions}
        onChange={(exclusions) => set({ exclusions })}
      />
      <LongField
        id="words"
        label="What the design settles, in its own words"
        errors={form.errors}
        value={value.words}
        onChange={(words) => set({ words })}
      />
      <TextField
        id="design-thickness"
        label="Base thickness it sets (optional)"
        unit="in"
        numeric
        errors={form.errors}
        value={value.thickness}
        onChange={(thickness) => set({ thickness })}
      />
      <TextField
        id="design-spacing"
        label="Support spacing it sets (optional)"
        unit="in"
        numeric
        errors={form.errors}
        value={value.spacing}
        onChange={(spacing) => set({ spacing })}
      />
      <div>
        <button type="submit" aria-disabled={form.busy}>
          Enter the design
        </button>
      </div>
    </form>
  );
}

const PLACE: Readonly<Record<string, string>> = {
  documents: 'design-files',
  dated: 'dated',
  scope: 'design-scope',
  adopts: 'words',
};
