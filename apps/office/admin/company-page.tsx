// The company's settings.

import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState, type FormEvent } from 'react';
import { companyQuery, type Company } from '../api/administration.js';
import { ask, problemFrom } from '../api/client.js';
import { ErrorSummary, errorsOf } from '../parts/errors.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { day } from '../parts/words.js';
import { useAnnounce } from '../shell/live.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';

export function CompanyPage() {
  const company = useQuery(companyQuery);
  const [failed, setFailed] = useState(false);
  return (
    <Page title="Company" section="Admin" failed={failed}>
      <AdminNav />
      {company.isPending && <Loading what="the company" />}
      {company.error && <Failure error={company.error} retry={() => void company.refetch()} />}
      {company.data && (
        <>
          <Settings company={company.data} setFailed={setFailed} />
          <p className="quiet">
            Here since {day(company.data.since)}. Rules and house policies are settings of the rules
            edition; prices and profiles belong to the catalogue.
          </p>
        </>
      )}
    </Page>
  );
}

const FIELDS = [
  {
    id: 'name',
    label: 'Name of the company',
    hint: 'Stands on papers and letters from now on; what was issued stays as it is',
    auto: 'organization',
  },
  {
    id: 'address',
    label: 'Address (optional)',
    hint: 'Street, place, state and ZIP code in one line, for orders and letters',
    auto: 'street-address',
  },
  { id: 'phone', label: 'Phone (optional)', hint: undefined, auto: 'tel' },
] as const;

function Settings({
  company,
  setFailed,
}: {
  readonly company: Company;
  readonly setFailed: (failed: boolean) => void;
}) {
  const client = useQueryClient();
  const say = useAnnounce();
  const [typed, setTyped] = useState(company);
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const [saved, setSaved] = useState(false);
  useEffect(() => setTyped(company), [company]);
  const show = (found: FieldErrors) => {
    setErrors(found);
    setFailed(found.length > 0);
    setAttempt((n) => n + 1);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setSaved(false);
    if (typed.name.trim() === '')
      return show([{ field: 'company-name', message: 'Enter the name' }]);
    show([]);
    try {
      const { name, address, phone } = typed;
      await ask('/company', { method: 'PATCH', body: { name, address, phone } });
      await client.invalidateQueries({ queryKey: companyQuery.queryKey });
      await client.invalidateQueries({ queryKey: ['session'] });
      setSaved(true);
      say('The company’s settings are saved.');
    } catch (error) {
      show(errorsOf(problemFrom(error), (pointer) => `company-${pointer.slice(1) || 'name'}`));
    }
  };
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => void submit(event)}>
      <ErrorSummary errors={errors} attempt={attempt} />
      {FIELDS.map(({ id, label, hint, auto }) => (
        <TextField
          key={id}
          id={`company-${id}`}
          label={label}
          {...(hint ? { hint } : {})}
          autoComplete={auto}
          errors={errors}
          value={typed[id]}
          onChange={(value) => setTyped({ ...typed, [id]: value })}
        />
      ))}
      <div className="row">
        <button type="submit" className="main">
          Save
        </button>
        {saved && <span>Saved.</span>}
      </div>
    </form>
  );
}
