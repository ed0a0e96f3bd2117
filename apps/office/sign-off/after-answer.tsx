// After an approval: its engineer reaffirms it over stated differences, or revokes it.

import { useState } from 'react';
import type { JobView, RequestView, SignOffView } from '#jobs/contract';
import { useDraft } from '../parts/draft.js';
import { ErrorSummary } from '../parts/errors.js';
import { LongField } from '../parts/fields.js';
import {
  LicenseFields,
  licenseFaults,
  licenseOf,
  licensePlace,
  NO_LICENSE,
} from '../parts/license.js';
import { useForm } from '../parts/use-form.js';
import { day, pathWords, value as valueWords } from '../parts/words.js';
import { Confirm } from './confirm.js';

interface Props {
  readonly job: JobView;
  readonly request: RequestView;
}

export function Reaffirm({ job, request, sign }: Props & { readonly sign: SignOffView }) {
  const { license } = request;
  const draft = useDraft(`${job.id} ${request.request} reaffirm`, {
    ...NO_LICENSE,
    ...(license
      ? {
          engineer: license.name,
          license: license.number,
          state: license.jurisdiction,
          until: day(license.expires),
        }
      : {}),
    statement: '',
  });
  const { value, set } = draft;
  const [review, setReview] = useState(false);
  const form = useForm(
    job.id,
    (pointer) => licensePlace(pointer) ?? 'again-statement',
    'Reaffirmed.',
  );
  const faults = [
    ...licenseFaults(value),
    ...(value.statement.trim()
      ? []
      : [{ field: 'again-statement', message: 'Write your statement' }]),
  ];
  const command = () => ({
    type: 'reaffirm-sign-off' as const,
    request: request.request,
    license: licenseOf(value),
    statement: value.statement.trim(),
    differences: sign.differences.map(({ surface, path, from, to }) => ({
      surface,
      path,
      from,
      to,
    })),
  });
  if (review) {
    return (
      <Confirm
        title="Review your reaffirmation"
        button="Sign the reaffirmation"
        {...form}
        words={[
          ['Statement', value.statement],
          [
            'Differences',
            sign.differences
              .map(
                ({ path, from, to }) =>
                  `${pathWords(path)}: ${valueWords(from)} → ${valueWords(to)}`,
              )
              .join('; '),
          ],
          ['Signer', `${value.engineer}, license ${value.license}`],
        ]}
        correct="It can be revoked by you; history keeps both."
        back={() => setReview(false)}
        confirm={() => form.submit([], command, draft.clear)}
      />
    );
  }
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (faults.length > 0) form.submit(faults, command, () => undefined);
        else setReview(true);
      }}
    >
      <h2>Reaffirm over these differences</h2>
      <ErrorSummary {...form} />
      <LongField
        id="again-statement"
        label="Your statement, in a full sentence"
        errors={form.errors}
        value={value.statement}
        onChange={(statement) => set({ statement })}
      />
      <LicenseFields typed={value} set={set} errors={form.errors} />
      <div>
        <button type="submit" className="main">
          Review your reaffirmation
        </button>
      </div>
    </form>
  );
}

export function Revoke({ job, request }: Props) {
  const [reason, setReason] = useState('');
  const [review, setReview] = useState(false);
  const form = useForm(job.id, () => 'revoke-reason', 'Revoked.');
  const command = () => ({
    type: 'revoke-sign-off' as const,
    request: request.request,
    reason: reason.trim(),
  });
  if (review) {
    return (
      <Confirm
        title="Review the revocation"
        button="Revoke the sign-off"
        {...form}
        words={[['Reason', reason]]}
        correct="A new request can be made. Documents issued before get a linked notice; history is kept."
        back={() => setReview(false)}
        confirm={() => form.submit([], command, () => setReason(''))}
      />
    );
  }
  return (
    <details>
      <summary>Revoke this sign-off</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (reason.trim()) setReview(true);
          else
            form.submit(
              [{ field: 'revoke-reason', message: 'Say why it is revoked' }],
              command,
              () => undefined,
            );
        }}
      >
        <ErrorSummary {...form} />
        <LongField
          id="revoke-reason"
          label="Reason"
          errors={form.errors}
          value={reason}
          onChange={setReason}
        />
        <div>
          <button type="submit" className="danger">
            Review the revocation
          </button>
        </div>
      </form>
    </details>
  );
}
