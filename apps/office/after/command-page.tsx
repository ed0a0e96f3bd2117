// One command after the gauge: its small form, at an address of its own.

import { useQuery } from '@tanstack/react-query';
import { Link, useParams, useSearch } from '@tanstack/react-router';
import { catalogueQuery, sessionQuery } from '../api/queries.js';
import { Cautions, ROOF_CAUTIONS } from '../parts/cautions.js';
import { Empty } from '../parts/states.js';
import { jobCrumbs, WithJob } from '../jobs/use-job.js';
import { has } from '../shell/home.js';
import { NotFound } from '../shell/inside.js';
import { Page } from '../shell/page.js';
import type { JobAnswer } from '../api/queries.js';
import { AskFields } from './ask-fields.js';
import { faultsOf, fieldOf, givenIn, wordsOf, type AfterForm, type Typed } from './asks.js';
import { CommandForm } from './command-form.js';
import { AFTER_FORMS } from './forms.js';

export function AfterCommandPage() {
  const { command = '' } = useParams({ strict: false });
  const form = AFTER_FORMS[command];
  if (!form) return <NotFound />;
  return (
    <WithJob>{(answer) => <One key={command} name={command} form={form} {...answer} />}</WithJob>
  );
}

type Named = JobAnswer & { readonly name: string; readonly form: AfterForm };

function One(named: Named) {
  const { job, form } = named;
  const session = useQuery(sessionQuery).data;
  const missing = form.missing(job);
  return (
    <Page
      title={form.title}
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      lead={form.lead && <p>{form.lead}</p>}
    >
      {!has(session, ...form.roles) ? (
        <Empty title="Not for your role">
          <p>Your role may read this job, not record this.</p>
        </Empty>
      ) : missing !== null ? (
        <Empty title="Not yet">
          <p>
            {missing}{' '}
            <Link to="/jobs/$job" params={{ job: job.id }}>
              Back to the job
            </Link>
          </p>
        </Empty>
      ) : (
        <Filled {...named} />
      )}
      {form.roofWork && <Cautions title="Cautions for roof work" lines={ROOF_CAUTIONS} />}
    </Page>
  );
}

function Filled({ job, version, name, form }: Named) {
  const { about = '' } = useSearch({ strict: false }) as { about?: string };
  const catalogue = useQuery(catalogueQuery).data;
  const asks = (typed: Typed) => form.asks(job, typed.values, catalogue);
  const command = (typed: Typed) => form.command(givenIn(typed), job);
  return (
    <CommandForm<Typed>
      job={job}
      version={version}
      name={`${name} ${about}`}
      initial={{ values: form.start?.(job, about) ?? {}, files: {} }}
      faults={(typed) => faultsOf(asks(typed), typed)}
      command={command}
      {...(form.gated
        ? {
            asked: (typed: Typed) =>
              faultsOf(asks(typed), typed).length > 0 ? null : command(typed),
            firm: form.gated === 'firm',
          }
        : {})}
      place={placeIn(form, job, catalogue)}
      button={form.button}
      saved={form.saved}
      {...(form.correct
        ? {
            review: { correct: form.correct, words: (typed: Typed) => wordsOf(asks(typed), typed) },
          }
        : {})}
    >
      {({ typed, set, errors }) => (
        <AskFields asks={asks(typed)} typed={typed} set={set} errors={errors} />
      )}
    </CommandForm>
  );
}

/** A pointer's first part is the name of a field where there is one. */
const placeIn =
  (form: AfterForm, job: Named['job'], catalogue: Parameters<AfterForm['asks']>[2]) =>
  (pointer: string): string => {
    const id = pointer.split('/')[1] ?? '';
    const ask = form.asks(job, {}, catalogue).find((each) => each.id === id);
    return ask ? fieldOf(ask) : '';
  };
