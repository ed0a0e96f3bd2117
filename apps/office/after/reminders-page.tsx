// Reminders: what is overdue or falls due, and a calendar address of one's own.

import { queryOptions, useMutation, useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { ask, problemFrom } from '../api/client.js';
import { SelectField } from '../parts/fields.js';
import { Empty, Failure, Loading } from '../parts/states.js';
import { Heads, ScrollTable, Tag } from '../parts/table.js';
import { day, prose } from '../parts/words.js';
import { Page } from '../shell/page.js';

interface Reminder {
  readonly kind: string;
  readonly about: string;
  readonly job: string | null;
  readonly number: string | null;
  readonly name: string;
  readonly falls_on: string;
  readonly overdue: boolean;
  readonly words: string;
}

const remindersQuery = (days: string) =>
  queryOptions({
    queryKey: ['reminders', days],
    queryFn: async ({ signal }) =>
      (await ask<{ reminders: readonly Reminder[] }>(`/reminders?days=${days}`, { signal })).value
        .reminders,
  });

const AHEAD = ['7', '30', '90', '365'];
const AHEAD_OPTIONS = AHEAD.map((days) => ({ value: days, label: `${days} days` }));

export function RemindersPage() {
  const { days: given = '' } = useSearch({ strict: false }) as { days?: string };
  const days = AHEAD.includes(given) ? given : '30';
  const navigate = useNavigate();
  const found = useQuery(remindersQuery(days));
  return (
    <Page title="Reminders" lead={<p>What is overdue, and what falls due soon; soonest first.</p>}>
      <SelectField
        id="days"
        label="Look ahead"
        value={days}
        options={AHEAD_OPTIONS}
        onChange={(next) => void navigate({ to: '/reminders', search: { days: next } })}
      />
      {found.isPending && <Loading what="the reminders" />}
      {found.error && <Failure error={found.error} retry={() => void found.refetch()} />}
      {found.data && <List reminders={found.data} />}
      <Calendar />
    </Page>
  );
}

function List({ reminders }: { readonly reminders: readonly Reminder[] }) {
  if (reminders.length === 0)
    return (
      <Empty title="Nothing falls due">
        <p>Look further ahead to see what comes.</p>
      </Empty>
    );
  const overdue = reminders.filter((each) => each.overdue).length;
  return (
    <ScrollTable
      caption="Reminders"
      note={
        <span role="status">
          {reminders.length} found, {overdue} overdue
        </span>
      }
    >
      <Heads names={['Falls on', 'Job', 'What', 'State']} />
      <tbody>
        {reminders.map((each) => (
          <tr key={`${each.kind} ${each.about} ${each.job}`}>
            <th scope="row">{day(each.falls_on)}</th>
            <td>
              {each.job ? (
                <Link to="/jobs/$job" params={{ job: each.job }} className="row-link">
                  {each.number} {each.name}
                </Link>
              ) : (
                each.name
              )}
            </td>
            <td>{prose(each.words)}</td>
            <td>
              <Tag tone={each.overdue ? 'blocked' : 'waiting'}>
                {each.overdue ? 'Overdue' : 'Due soon'}
              </Tag>
            </td>
          </tr>
        ))}
      </tbody>
    </ScrollTable>
  );
}

function Calendar() {
  const make = useMutation({
    mutationFn: async () =>
      (await ask<{ path: string }>('/reminders/feed', { method: 'POST', body: {} })).value.path,
  });
  const stop = useMutation({
    mutationFn: () => ask('/reminders/feed', { method: 'DELETE' }),
    onSuccess: () => make.reset(),
  });
  const failed = make.error ?? stop.error;
  return (
    <section className="sheet stack">
      <h2>In your calendar</h2>
      <p>
        A secret address that a calendar program can read. Who has it sees your reminders; a new one
        stops the old.
      </p>
      <div className="row">
        <button type="button" onClick={() => make.mutate()}>
          Make a new address
        </button>
        <button type="button" onClick={() => stop.mutate()}>
          Stop my address
        </button>
      </div>
      <div role="status">
        {make.data && (
          <p>
            Shown once: <span className="digest">{`${location.origin}${make.data}`}</span>
          </p>
        )}
        {stop.isSuccess && !make.data && <p>Your calendar address no longer works.</p>}
      </div>
      {failed && <p role="alert">{problemFrom(failed).detail ?? problemFrom(failed).title}</p>}
    </section>
  );
}
