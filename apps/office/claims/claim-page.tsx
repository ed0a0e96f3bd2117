// One claim for the reviewer: what is claimed, every test with its numbers, what was built against what
// was approved, what changed since the gauge was chosen; and the decision, which is a person's.

import { Link, useParams } from '@tanstack/react-router';
import { label } from '#jobs/contract';
import { To } from '../after/to.js';
import { surfaceName } from '../after/pick.js';
import { useNames } from '../api/queries.js';
import { idsIn, jobCrumbs, WithJob } from '../jobs/use-job.js';
import { CAMERA_CAUTIONS, Cautions } from '../parts/cautions.js';
import { FactTable } from '../parts/fact-table.js';
import { NotFound } from '../shell/inside.js';
import { Page } from '../shell/page.js';
import { capital, day, moment } from '../parts/words.js';
import { Built } from './built.js';
import { Readings } from './readings.js';
import { Since } from './since.js';
import { Tests } from './tests.js';
import { Document } from './document.js';
import type { OfClaim } from './of-claim.js';

export function ClaimPage() {
  const { claim: id = '' } = useParams({ strict: false }) as { claim?: string };
  return (
    <WithJob>
      {({ job }) => {
        const claim = job.after.claims.find((each) => each.claim === id);
        return claim ? <Claim job={job} claim={claim} /> : <NotFound />;
      }}
    </WithJob>
  );
}

function Claim({ job, claim }: OfClaim) {
  const nameOf = useNames([...idsIn(job), ...(claim.decided ? [claim.decided.by] : [])]);
  return (
    <Page
      title={`Claim ${claim.claim}: ${label(claim.kind)}, ${surfaceName(job, claim.surface)}`}
      section={`Job ${job.number}`}
      crumbs={jobCrumbs(job)}
      lead={<p>{claim.words}</p>}
    >
      <section className="sheet stack" aria-labelledby="claimed">
        <h2 id="claimed">What is claimed</h2>
        <FactTable
          rows={[
            ['What', capital(label(claim.kind))],
            ['Surface', surfaceName(job, claim.surface)],
            ['Coil or lot', claim.lot ?? 'not known'],
            ['Notice was given', day(claim.notice)],
            ['Warranty document', claim.document ?? 'none named'],
            ['Opened', moment(claim.opened_at)],
          ]}
        />
      </section>
      <Tests claim={claim} />
      <Decision job={job} claim={claim} nameOf={nameOf} />
      <Readings claim={claim} />
      <Document job={job} claim={claim} />
      <Built job={job} claim={claim} />
      <Since job={job} claim={claim} />
      <section className="stack" aria-labelledby="further">
        <h2 id="further">The record behind it</h2>
        <ul className="surface-list">
          <li>
            <Link to="/jobs/$job/record" params={{ job: job.id }}>
              Decision record
            </Link>
            , why this gauge
          </li>
          <li>
            <Link to="/jobs/$job/proof" params={{ job: job.id }}>
              Proof and evidence
            </Link>
            , and how to check it without this system
          </li>
        </ul>
      </section>
      <Cautions title="Cautions for photos and visits" lines={CAMERA_CAUTIONS} />
    </Page>
  );
}

function Decision({ job, claim, nameOf }: OfClaim & { readonly nameOf: (id: string) => string }) {
  const { decided } = claim;
  return (
    <section className="sheet stack" aria-labelledby="decision">
      <h2 id="decision">The decision</h2>
      {decided === null ? (
        <>
          <p>Not decided. The tests are laid out above; a person decides, with a reason.</p>
          <p className="row">
            <To job={job} command="record-reading" about={claim.claim} />
            <To job={job} command="decide-claim" about={claim.claim} />
          </p>
        </>
      ) : (
        <>
          <FactTable
            rows={[
              ['Decision', capital(label(decided.decision))],
              ['By', `${nameOf(decided.by)}, ${moment(decided.at)}`],
              ['Reason', decided.reason],
              ['Clause it rests on', decided.clause],
            ]}
          />
          <p>
            <a href={`/api/jobs/${job.id}/papers/decision-letter/${claim.claim}/print.pdf`}>
              Letter to the owner, PDF
            </a>
          </p>
        </>
      )}
    </section>
  );
}
