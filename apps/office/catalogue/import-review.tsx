// What a checked file would change of the newest edition, and publishing it with a reason.

import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import type { Catalogue } from '#jobs/contract';
import { ask, problemFrom } from '../api/client.js';
import { errorsOf, ErrorSummary } from '../parts/errors.js';
import { LongField, type FieldError } from '../parts/fields.js';
import { PlainTable } from '../parts/table.js';
import { capital, day, number } from '../parts/words.js';
import { useAnnounce } from '../shell/live.js';

export interface Checked {
  readonly draft: Catalogue;
  readonly notes: readonly string[];
  readonly newest: number;
  readonly differences: number;
  readonly difference: readonly {
    readonly part: string;
    readonly row: string;
    readonly column: string;
    readonly was: string | null;
    readonly becomes: string | null;
  }[];
}

const SHOWN = 200;

export function ImportReview({
  checked,
  back,
}: {
  readonly checked: Checked;
  readonly back: () => void;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [reason, setReason] = useState('');
  const publishing = usePublish(checked, reason);
  useEffect(() => heading.current?.focus(), []);
  const { draft, differences, newest } = checked;
  const against = newest === 0 ? 'no edition before' : `edition ${newest}`;
  return (
    <section className="sheet stack" aria-labelledby="import-review">
      <h2 id="import-review" tabIndex={-1} ref={heading}>
        Publish catalogue edition {draft.edition}?
      </h2>
      <ErrorSummary errors={publishing.errors} attempt={publishing.attempt} />
      <p>
        No cell is wrong. Against {against}, {counted(differences)}.
      </p>
      <dl className="facts">
        <dt>In force from</dt>
        <dd>{day(draft.in_force_from)}</dd>
        <dt>What is new</dt>
        <dd>{draft.summary}</dd>
      </dl>
      <Difference checked={checked} />
      {checked.notes.length > 0 && (
        <div className="notice waiting stack tight">
          <h3>Worth a look</h3>
          <ul>
            {checked.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </div>
      )}
      <LongField
        id="reason"
        label="Why it is published"
        errors={publishing.errors}
        value={reason}
        onChange={setReason}
      />
      <p>
        How this can be corrected: an edition is never changed; another one follows it. Decisions
        keep the edition they name.
      </p>
      <div className="row">
        <button type="button" onClick={back}>
          Go back
        </button>
        <button
          type="button"
          className="main"
          aria-disabled={publishing.busy}
          onClick={publishing.send}
        >
          {publishing.busy ? 'Publishing…' : `Publish edition ${draft.edition}`}
        </button>
      </div>
    </section>
  );
}

const counted = (count: number): string =>
  count === 0
    ? 'nothing differs'
    : count === 1
      ? 'one thing differs'
      : `${count.toLocaleString('en-US')} things differ`;

function Difference({ checked: { difference, differences } }: { readonly checked: Checked }) {
  if (difference.length === 0) return null;
  const shown = difference.slice(0, SHOWN);
  const more = differences - shown.length;
  return (
    <PlainTable
      caption="What differs"
      note={
        more > 0 ? `The first ${shown.length}; ${more.toLocaleString('en-US')} more` : undefined
      }
      columns={['Part', 'Row', 'What', 'Was', 'Becomes']}
      rows={shown.map((each) => [
        capital(each.part),
        each.row,
        each.column ? capital(each.column) : 'The whole row',
        each.was === null ? 'not there' : number(each.was),
        each.becomes === null ? 'not there' : number(each.becomes),
      ])}
    />
  );
}

function usePublish({ draft }: Checked, reason: string) {
  const client = useQueryClient();
  const navigate = useNavigate();
  const say = useAnnounce();
  const [missing, setMissing] = useState<readonly FieldError[]>([]);
  const [attempt, setAttempt] = useState(0);
  const key = useRef(crypto.randomUUID());
  const send = useMutation({
    mutationFn: () =>
      ask('/catalogue/editions', {
        method: 'POST',
        key: key.current,
        body: { catalogue: draft, reason: reason.trim() },
      }),
    onSuccess: () => {
      say(`Catalogue edition ${draft.edition} is published.`);
      void navigate({ to: '/catalogue/$edition', params: { edition: String(draft.edition) } });
      for (const queryKey of [['catalogue'], ['catalogue editions']])
        void client.invalidateQueries({ queryKey });
    },
    onError: () => {
      key.current = crypto.randomUUID();
      setAttempt((n) => n + 1);
    },
  });
  return {
    errors:
      missing.length > 0
        ? missing
        : errorsOf(send.error ? problemFrom(send.error) : null, () => ''),
    attempt,
    busy: send.isPending,
    send: () => {
      const found = reason.trim() ? [] : [{ field: 'reason', message: 'Say why it is published' }];
      setMissing(found);
      setAttempt((n) => n + 1);
      if (found.length === 0 && !send.isPending) send.mutate();
    },
  };
}
