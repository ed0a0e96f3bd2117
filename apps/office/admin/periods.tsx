// How long the office keeps details before they may be erased, for people and for sites.

import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState, type FormEvent } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { disposalQuery, type PartyKind, type Period } from '../api/disposal.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { useAnnounce } from '../shell/live.js';

const LABELS: Readonly<Record<PartyKind, string>> = {
  person: 'Years for details of people',
  site: 'Years for details of sites',
};
const fieldOf = (kind: PartyKind) => `years-${kind}`;
const FORM = /^([1-9]\d?|100)?$/;

export function Periods({ periods }: { readonly periods: readonly Period[] }) {
  const client = useQueryClient();
  const say = useAnnounce();
  const stands = JSON.stringify(periods.map(({ kind, years }) => [kind, String(years ?? '')]));
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const sending = useRef(false);
  useEffect(() => setTyped(Object.fromEntries(JSON.parse(stands) as [string, string][])), [stands]);
  const show = (found: FieldErrors) => {
    setErrors(found);
    setAttempt((n) => n + 1);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (sending.current) return;
    const wrong = periods.filter(({ kind }) => !FORM.test((typed[kind] ?? '').trim()));
    show(
      wrong.map(({ kind }) => ({
        field: fieldOf(kind),
        message: 'Enter whole years from 1 to 100, or leave it empty for none',
      })),
    );
    if (wrong.length > 0) return;
    sending.current = true;
    try {
      for (const { kind } of periods) await set(kind, (typed[kind] ?? '').trim());
      say('The periods are set.');
    } catch (error) {
      show(errorsOf(problemFrom(error), () => ''));
    } finally {
      sending.current = false;
      await client.invalidateQueries({ queryKey: disposalQuery.queryKey });
    }
  };
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <h2>How long details are kept</h2>
      <ErrorSummary errors={errors} attempt={attempt} />
      {periods.map(({ kind, words }) => (
        <TextField
          key={kind}
          id={fieldOf(kind)}
          label={LABELS[kind]}
          hint={`Now: ${words}. Empty for none.`}
          numeric
          inputMode="numeric"
          errors={errors}
          value={typed[kind] ?? ''}
          onChange={(years) => setTyped({ ...typed, [kind]: years })}
        />
      ))}
      <p className="quiet">
        Before a period has ended, details are erased only where the law asks for it. Nothing is
        erased by itself when it has ended. What the law asks the office to keep, and for how long,
        the office asks its counsel.
      </p>
      <div>
        <button type="submit" className="main">
          Set the periods
        </button>
      </div>
    </form>
  );
}

const set = (kind: PartyKind, years: string) =>
  ask(`/disposal/retention/${kind}`, {
    method: 'PUT',
    body: { years: years === '' ? null : Number(years) },
  });
