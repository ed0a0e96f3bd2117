// The owner's report: how long jobs stand in each stage, on whom they waited, how often rules were set
// aside. The span of days stands in the address.

import { queryOptions, useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useState, type FormEvent } from 'react';
import { AFTER_STAGES, label, STAGES } from '#jobs/contract';
import { ask } from '../api/client.js';
import { ErrorSummary } from '../parts/errors.js';
import { DateField, type FieldErrors } from '../parts/fields.js';
import { Empty, Failure, Loading, counting } from '../parts/states.js';
import { PlainTable } from '../parts/table.js';
import { capital, day, parseDay } from '../parts/words.js';
import { Page } from '../shell/page.js';

interface Report {
  readonly stages: readonly {
    readonly stage: string;
    readonly jobs: number;
    readonly mean: number;
    readonly median: number;
    readonly longest: number;
  }[];
  readonly waits: readonly {
    readonly stage: string;
    readonly on: string;
    readonly times: number;
    readonly days: number;
  }[];
  readonly overrides: readonly {
    readonly stage: string;
    readonly confirmations: number;
    readonly with_overrides: number;
    readonly rate: number;
  }[];
}
interface Span {
  readonly from?: string;
  readonly to?: string;
}

const reportQuery = ({ from, to }: Span) =>
  queryOptions({
    queryKey: ['report', from, to],
    queryFn: async ({ signal }) => {
      const given = Object.entries({ from, to }).filter(([, value]) => value) as string[][];
      const query = new URLSearchParams(given).toString();
      return (await ask<Report>(`/reports/stages${query && `?${query}`}`, { signal })).value;
    },
  });

const ORDER: readonly string[] = [...STAGES, 'done', ...AFTER_STAGES];
const inOrder = (a: { readonly stage: string }, b: { readonly stage: string }): number =>
  ORDER.indexOf(a.stage) - ORDER.indexOf(b.stage);
const stageName = (stage: string): string =>
  stage === 'done'
    ? 'Ready to order'
    : stage === 'no-surfaces'
      ? 'Surfaces to add'
      : capital(label(stage));
const days = (value: number): string => (value < 10 ? value.toFixed(1) : whole(Math.round(value)));
const whole = (value: number): string => value.toLocaleString('en-US');
const num = (name: string) => ({ name, num: true }) as const;

export function ReportPage() {
  const span = useSearch({ strict: false }) as Span;
  const report = useQuery(reportQuery(span));
  return (
    <Page
      title="Where the time goes"
      section="Report"
      lead={<p role="status">{report.data ? finding(report.data) : counting(report)}</p>}
    >
      <SpanForm key={`${span.from} ${span.to}`} span={span} />
      {report.isPending && <Loading what="the report" />}
      {report.error && <Failure error={report.error} retry={() => void report.refetch()} />}
      {report.data && <Tables report={report.data} />}
    </Page>
  );
}

/** The one thing to know first. */
function finding({ waits }: Report): string {
  const total = waits.reduce((sum, each) => sum + each.days, 0);
  const [most] = [...waits].sort((a, b) => b.days - a.days);
  if (!most || total < LEAST) return 'No job waited on anybody in these days.';
  const share = Math.round((most.days / total) * 100);
  return `${share} % of all waiting was at ${stageName(most.stage).toLowerCase()}, on: ${label(most.on)}.`;
}

/** About an hour, in days: less is not worth a row. */
const LEAST = 0.05;

function Tables({ report }: { readonly report: Report }) {
  const { overrides } = report;
  const stages = report.stages.filter(({ longest }) => longest >= LEAST);
  const waits = report.waits.filter((each) => each.days >= LEAST);
  if (stages.length === 0 && overrides.length === 0)
    return (
      <Empty title="No job has stood anywhere for an hour">
        <p>Look again once jobs have waited, or choose other days.</p>
      </Empty>
    );
  return (
    <>
      {stages.length > 0 && <Stages stages={stages} />}
      {waits.length > 0 && <Waits waits={waits} />}
      {overrides.length > 0 && (
        <PlainTable
          caption="Rules set aside"
          note="Of the confirmations in these days; each one has its reason in the record"
          columns={['Stage', num('Confirmed'), num('With a rule set aside'), num('Rate')]}
          rows={[...overrides]
            .sort(inOrder)
            .map((each) => [
              stageName(each.stage),
              whole(each.confirmations),
              whole(each.with_overrides),
              `${(each.rate * 100).toFixed(1)} %`,
            ])}
        />
      )}
    </>
  );
}

function SpanForm({ span }: { readonly span: Span }) {
  const navigate = useNavigate();
  const [from, setFrom] = useState(day(span.from));
  const [to, setTo] = useState(day(span.to));
  const [errors, setErrors] = useState<FieldErrors>([]);
  const [attempt, setAttempt] = useState(0);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const wrong = [
      ['report-from', from],
      ['report-to', to],
    ].filter(([, text]) => text?.trim() && !parseDay(text));
    setErrors(
      wrong.map(([field = '']) => ({ field, message: 'Enter a day like 14 Feb 2026, or nothing' })),
    );
    setAttempt((n) => n + 1);
    if (wrong.length > 0) return;
    const search = { from: parseDay(from), to: parseDay(to) };
    void navigate({
      to: '/report',
      search: Object.fromEntries(Object.entries(search).filter(([, value]) => value)),
    });
  };
  return (
    <form className="stack" noValidate onSubmit={submit} aria-label="Days">
      <ErrorSummary errors={errors} attempt={attempt} />
      <div className="filters">
        <DateField
          id="report-from"
          label="Began on or after (optional)"
          errors={errors}
          value={from}
          onChange={setFrom}
        />
        <DateField
          id="report-to"
          label="Began on or before (optional)"
          errors={errors}
          value={to}
          onChange={setTo}
        />
        <button type="submit">Show these days</button>
      </div>
    </form>
  );
}

const Stages = ({ stages }: Pick<Report, 'stages'>) => (
  <PlainTable
    caption="Days in each stage"
    note="Stages still open count until now. Half of the jobs took no longer than the median. What took less than an hour is left out."
    columns={['Stage', num('Jobs'), num('Median'), num('Mean'), num('Longest')]}
    rows={[...stages]
      .sort(inOrder)
      .map((each) => [
        stageName(each.stage),
        whole(each.jobs),
        days(each.median),
        days(each.mean),
        days(each.longest),
      ])}
  />
);

function Waits({ waits }: Pick<Report, 'waits'>) {
  const total = waits.reduce((sum, each) => sum + each.days, 0);
  return (
    <PlainTable
      caption="On whom jobs waited"
      note="Longest first"
      columns={['Stage', 'Waiting on', num('Times'), num('Days'), num('Share')]}
      rows={waits.map((each) => [
        stageName(each.stage),
        capital(label(each.on)),
        whole(each.times),
        days(each.days),
        total === 0 ? '0 %' : `${((each.days / total) * 100).toFixed(1)} %`,
      ])}
    />
  );
}
